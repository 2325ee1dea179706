import {PassThrough} from 'node:stream'
import {describe, expect, test} from 'vitest'
import {findingGroups} from '../../src/cli/terminal/finding-groups.ts'
import {counted, grouped} from '../../src/cli/terminal/number-words.ts'
import {colours, noColours} from '../../src/cli/terminal/paint.ts'
import {channelOf} from '../../src/cli/terminal/process-terminal.ts'
import {progress} from '../../src/cli/terminal/progress.ts'
import {sentence} from '../../src/cli/terminal/sentence.ts'
import {shellWord} from '../../src/cli/terminal/shell-word.ts'
import {visible, visibleJson} from '../../src/cli/terminal/visible.ts'
import {textWidth, wrapText} from '../../src/cli/terminal/wrap-text.ts'
import type {Finding, Severity} from '../../src/model/finding.ts'
import {listWords} from '../../src/model/list-words.ts'
import {capturedTerminal} from './captured-terminal.ts'

describe('what a stream can show', () => {
  const stream = (isTTY: boolean, columns = 80): NodeJS.WriteStream =>
    Object.assign(new PassThrough(), {isTTY, columns}) as unknown as NodeJS.WriteStream

  test('a terminal with a language in UTF-8 has colours and lines', () => {
    const {paint, draws, width, isTerminal} = channelOf(
      stream(true),
      {LANG: 'en_GB.UTF-8', TERM: 'xterm'},
      'linux'
    )
    expect({colour: paint === colours, draws, width, isTerminal}).toEqual({
      colour: true,
      draws: true,
      width: 80,
      isTerminal: true
    })
  })

  test('NO_COLOR takes the colours, TERM=dumb everything, a pipe everything', () => {
    const noColor = channelOf(stream(true), {LANG: 'C.UTF-8', NO_COLOR: '1'}, 'linux')
    expect([noColor.paint, noColor.draws]).toEqual([noColours, true])
    const dumb = channelOf(stream(true), {LANG: 'C.UTF-8', TERM: 'dumb'}, 'linux')
    expect([dumb.paint, dumb.draws, dumb.isTerminal]).toEqual([noColours, false, false])
    const pipe = channelOf(stream(false), {LANG: 'C.UTF-8'}, 'linux')
    expect([pipe.paint, pipe.draws, pipe.width]).toEqual([noColours, false, 100])
  })

  test('lines are drawn only where the language says UTF-8', () => {
    expect(channelOf(stream(true), {LANG: 'C'}, 'linux').draws).toBe(false)
    expect(channelOf(stream(true), {LC_ALL: 'C', LANG: 'de_DE.UTF-8'}, 'linux').draws).toBe(false)
    expect(channelOf(stream(true), {}, 'win32').draws).toBe(true)
  })

  test('lines are never filled wider than is good to read, nor so narrow that nothing fits', () => {
    expect(channelOf(stream(true, 250), {}, 'linux').width).toBe(100)
    expect(channelOf(stream(true, 10), {}, 'linux').width).toBe(40)
  })

  test('a closed pipe is no fault, any other error of the stream is', () => {
    const out = stream(false)
    channelOf(out, {}, 'linux')
    expect(() => out.emit('error', Object.assign(new Error('closed'), {code: 'EPIPE'}))).not.toThrow()
    expect(() => out.emit('error', Object.assign(new Error('broken'), {code: 'EIO'}))).toThrow('broken')
  })
})

test('control characters, changes of direction and hidden characters are written out', () => {
  expect(visible('a\u0000b\u001b[2Jc\nd\te\u007f\u009b\u202e\u200b\ufeff')).toBe(
    'a\\x00b\\x1b[2Jc\\nd\\te\\x7f\\x9b\\u202e\\u200b\\ufeff'
  )
  expect(visible('Čerň 甲虫 ♀')).toBe('Čerň 甲虫 ♀')
  expect(visible('x'.repeat(5000)).length).toBeLessThan(700)
})

test('JSON with hidden characters written out is the same JSON', () => {
  const value = {cell: '\u001b\u009b\u202e\n"\u2028', list: [1, '\u007f']}
  expect(JSON.parse(visibleJson(value))).toEqual(value)
  expect(visibleJson(value)).toMatch(/^[\x20-\x7e\n]*$/)
})

test('text is broken at spaces; a word that is too long keeps its line', () => {
  expect(wrapText('one two  three', 7)).toEqual(['one two', 'three'])
  expect(wrapText('a unbreakable-word b', 5)).toEqual(['a', 'unbreakable-word', 'b'])
  expect(wrapText('', 5)).toEqual([''])
})

test('columns are counted as a terminal shows them', () => {
  expect([textWidth('abc'), textWidth('甲虫'), textWidth('e\u0301')]).toEqual([3, 4, 1])
})

test('numbers and lists are in words that a person would write', () => {
  expect([grouped(0), grouped(999), grouped(1000), grouped(12345678)]).toEqual([
    '0',
    '999',
    '1,000',
    '12,345,678'
  ])
  expect([counted(1, 'row'), counted(2866, 'row'), counted(0, 'row')]).toEqual([
    '1 row',
    '2,866 rows',
    '0 rows'
  ])
  expect([listWords([]), listWords(['a']), listWords(['a', 'b']), listWords(['a', 'b', 'c'])]).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c'
  ])
})

test('instructions become sentences, and names keep their letters', () => {
  expect(sentence('delete one of the two rows')).toBe('Delete one of the two rows.')
  expect(sentence('did you mean `x`?')).toBe('Did you mean `x`?')
  expect(sentence('`x` is missing')).toBe('`x` is missing.')
  expect(sentence('catch.csv is empty')).toBe('catch.csv is empty.')
})

test('a path is shown as it can be typed', () => {
  expect(shellWord('studies/2026')).toBe('studies/2026')
  expect(shellWord("Anna's study")).toBe("'Anna'\\''s study'")
})

test('groups come errors first, then by the order of the codes, and keep a remedy only where all share it', () => {
  const finding = (code: string, severity: Severity, remedy: string): Finding => ({
    code,
    severity,
    remedy,
    place: {file: 'catch.csv'},
    message: 'm',
    why: 'w'
  })
  const groups = findingGroups(
    [
      finding('b', 'note', '1'),
      finding('b', 'error', '1'),
      finding('a', 'error', '1'),
      finding('z', 'error', '1'),
      finding('a', 'error', '2')
    ],
    ['b', 'a']
  )
  expect(
    groups.map(({code, severity, findings, remedy}) => [code, severity, findings.length, remedy])
  ).toEqual([
    ['b', 'error', 1, '1'],
    ['a', 'error', 2, undefined],
    ['z', 'error', 1, '1'],
    ['b', 'note', 1, '1']
  ])
})

test('progress is shown on a terminal and taken away again, and nowhere else', () => {
  const screen = capturedTerminal({isTerminal: true, width: 40})
  const line = progress(screen.terminal.err, false)
  line.stage('Drawing\u001b[2J')
  line.say('soon after')
  line.clear()
  expect(screen.err()).toBe('\r\u001b[K\u001b[2mDrawing\\x1b[2J\u001b[22m\r\u001b[K')
  for (const [captured, quiet] of [
    [capturedTerminal(), false],
    [capturedTerminal({isTerminal: true}), true]
  ] as const) {
    const silent = progress(captured.terminal.err, quiet)
    silent.stage('Drawing')
    silent.clear()
    expect(captured.err()).toBe('')
  }
})
