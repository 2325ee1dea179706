import {readFileSync} from 'node:fs'
import {expect, test} from 'vitest'
import {runPitfolio} from '../../src/cli/run-pitfolio.ts'
import {faultText} from '../../src/cli/terminal/trouble-text.ts'
import {capturedTerminal, run} from './captured-terminal.ts'

const {version} = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  version: string
}

test('--help lists the commands with examples on standard output and ends with 0', async () => {
  const {code, out, err} = await run(['--help'])
  expect(code).toBe(0)
  expect(err).toBe('')
  for (const name of ['init', 'check', 'build', 'explain'])
    expect(out).toMatch(new RegExp(`^  ${name} `, 'm'))
  expect(out).toContain('Examples:\n  pitfolio init my-study\n')
})

test('every command has its own help with an example', async () => {
  for (const name of ['init', 'check', 'build', 'explain']) {
    const {code, out} = await run([name, '--help'])
    expect(code).toBe(0)
    expect(out).toContain(`Usage: pitfolio ${name}`)
    expect(out).toContain(`Examples:\n  pitfolio ${name}`)
    expect((await run(['help', name])).out).toBe(out)
  }
})

test('--version prints the version of the package', async () => {
  expect(await run(['--version'])).toEqual({code: 0, out: `pitfolio ${version}\n`, err: ''})
})

test('no command at all prints the help as a message and ends with 2', async () => {
  const {code, out, err} = await run([])
  expect(code).toBe(2)
  expect(out).toBe('')
  expect(err).toContain('Usage: pitfolio')
})

test('a mistyped command or option is answered with the nearest one and ends with 2', async () => {
  const command = await run(['chekc', 'x'])
  expect(command).toMatchObject({code: 2, out: ''})
  expect(command.err).toContain('(Did you mean check?)')
  const option = await run(['build', '--stric'])
  expect(option).toMatchObject({code: 2, out: ''})
  expect(option.err).toContain('(Did you mean --strict?)')
})

test('words that a command does not take end with 2', async () => {
  expect((await run(['check', 'a', 'b'])).code).toBe(2)
  expect((await run(['init'])).code).toBe(2)
  expect((await run(['build', '--out'])).code).toBe(2)
})

test('control characters in the words of a command do not reach the terminal', async () => {
  const {err} = await run(['\u001b[31mred'])
  expect(err).not.toContain('\u001b')
  expect(err).toContain('\\x1b[31mred')
})

test('an error that nobody expected ends with 70, says whose fault it is, and shows no code', async () => {
  const {terminal, err} = capturedTerminal()
  const broken = {
    ...terminal,
    out: {
      ...terminal.out,
      write: () => {
        throw new TypeError('x is not a function')
      }
    }
  }
  expect(await runPitfolio(['explain'], broken)).toBe(70)
  expect(err()).toContain('this is a fault in pitfolio, not in your data: x is not a function')
  expect(err()).toContain(`pitfolio ${version}, Node.js ${process.version}`)
  expect(err()).not.toMatch(/^\s+at /m)
})

test('PITFOLIO_DEBUG shows where a fault happened', () => {
  const {terminal} = capturedTerminal({debug: true})
  expect(faultText(terminal.err, new Error('gone wrong'), version, true)).toMatch(
    /^\s+at .*command-line\.test\.ts/m
  )
})
