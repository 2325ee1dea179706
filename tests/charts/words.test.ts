import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {measureClause, numberWords} from '../../src/charts/measure-words.ts'
import {wrapLabel} from '../../src/charts/wrap-label.ts'
import {listWords} from '../../src/model/list-words.ts'
import {measure} from './fixture.ts'

describe('numbers', () => {
  test('a number in a picture is rounded by what it is, and a share bears its sign', () => {
    expect(numberWords(1593, 'count')).toBe('1,593')
    expect(numberWords(512.333, 'rate')).toBe('512')
    expect(numberWords(0.1234, 'share')).toBe('12 %')
  })

  test('a number says its interval and its caution, or why there is none', () => {
    const interval = {low: 12.05, high: 24.64, confidence: 0.95, method: 'ratio estimate'}
    expect(measureClause(measure('rate', 'rate', 17.28, {interval}))).toBe(
      '17.3 (95 % interval 12.1 to 24.6)'
    )
    expect(measureClause(measure('rate', 'rate', 17.28, {interval, caution: 'rests on two sites'}))).toBe(
      '17.3 (95 % interval 12.1 to 24.6; rests on two sites)'
    )
    expect(measureClause(measure('rate', 'rate', null))).toBe('not defined, because no trap-night counts')
  })
})

describe('labels', () => {
  test('a label breaks at spaces', () => {
    expect(wrapLabel('Field margin along the old stone wall', 22, 2)).toBe(
      'Field margin along the\nold stone wall'
    )
  })

  test('a label that does not fit ends with an ellipsis', () => {
    expect(wrapLabel('one two three four five', 9, 2)).toBe('one two\nthree…')
  })

  test('no line is longer than allowed, and nothing but spaces is lost where there is room', () => {
    fc.assert(
      fc.property(
        fc.string({unit: 'grapheme-ascii', maxLength: 80}),
        fc.integer({min: 5, max: 30}),
        (label, longest) => {
          const lines = wrapLabel(label, longest, 100).split('\n')
          for (const line of lines) expect(line.length).toBeLessThanOrEqual(longest)
          expect(lines.join('').replaceAll(/\s/g, '')).toBe(label.replaceAll(/\s/g, ''))
        }
      )
    )
  })

  test('words are joined as in a sentence', () => {
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((items) => listWords(items))).toEqual([
      '',
      'a',
      'a and b',
      'a, b and c'
    ])
  })
})
