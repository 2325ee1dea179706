import fc from 'fast-check'
import {expect, test} from 'vitest'
import {formatNumber} from '../../src/model/format-number.ts'
import type {MeasureKind} from '../../src/model/quantity.ts'
import {formatAmount, formatInterval, formatMeasure} from '../../src/report/format-measure.ts'
import {measure, notDefined} from './small-results.ts'

const kinds: readonly MeasureKind[] = [
  'count',
  'nights',
  'rate',
  'diversity',
  'estimate',
  'share',
  'coverage',
  'probability',
  'ratio',
  'metres',
  'kilometres',
  'number'
]

test.each([
  [1593, 'count', '1,593'],
  [1234567, 'count', '1,234,567'],
  [-3, 'count', '−3'],
  [2645, 'nights', '2,645'],
  [20.5, 'nights', '20.5'],
  [20.04, 'nights', '20'],
  [53.333, 'rate', '53.3'],
  [0.045678, 'rate', '0.0457'],
  [0.0000123, 'rate', '0.0000123'],
  [999.6, 'estimate', '1,000'],
  [12345.6, 'estimate', '12,300'],
  [0, 'diversity', '0'],
  [0.12, 'share', '12'],
  [0.043, 'share', '4.3'],
  [0.0004, 'share', '<0.1'],
  [0.996, 'share', '99.6'],
  [0.9996, 'share', '>99.9'],
  [1, 'share', '100'],
  [0, 'share', '0'],
  [0.97, 'coverage', '0.970'],
  [412.4, 'metres', '412'],
  [2.5, 'metres', '2.5'],
  [0.84, 'kilometres', '0.84'],
  [12.34, 'kilometres', '12.3'],
  [2026, 'number', '2026'],
  [0.95, 'number', '0.95'],
  [-0.04, 'nights', '0']
] as const)('%d as a %s is printed %s', (value, kind, text) => {
  expect(formatNumber(value, kind)).toBe(text)
})

test('a number of any kind is digits only: no exponent, no NaN, and the minus is a true one', () => {
  const number = fc.double({noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15})
  fc.assert(
    fc.property(number, fc.constantFrom(...kinds), (value, kind) => {
      expect(formatNumber(value, kind)).toMatch(/^[<>]?−?(?:\d{1,3}(?:,\d{3})*|\d+)(?:\.\d+)?$/)
    })
  )
})

test.each([Number.NaN, Number.POSITIVE_INFINITY])(
  '%d is refused, for it must never have become a measure',
  (value) => {
    for (const kind of kinds) expect(() => formatNumber(value, kind)).toThrow(RangeError)
  }
)

test('a probability names itself, and small ones are not printed as nought', () => {
  expect(formatMeasure(measure(0.0342, 'probability'))).toBe('p = 0.034')
  expect(formatMeasure(measure(0.0002, 'probability'))).toBe('p < 0.001')
})

test('a share has its per cent sign, and its interval has it once', () => {
  const share = measure(0.12, 'share', undefined, {
    interval: {low: 0.032, high: 0.2, confidence: 0.95, method: 'exact'}
  })
  expect(formatMeasure(share)).toBe('12 %')
  expect(formatInterval(share)).toBe('3.2 to 20 %')
})

test('the unit is in the singular only where exactly 1 is printed', () => {
  const nights = ['trap-night', 'trap-nights'] as const
  expect([0, 0.5, 1, 1.04, 2].map((value) => formatAmount(measure(value, 'nights', nights)))).toEqual([
    '0 trap-nights',
    '0.5 trap-nights',
    '1 trap-night',
    '1 trap-night',
    '2 trap-nights'
  ])
})

test('numbers below ten are written in words on demand, and can begin a sentence', () => {
  const traps = ['trap', 'traps'] as const
  const amounts = [0, 1, 9, 10].map((value) =>
    formatAmount(measure(value, 'count', traps), {words: true, start: true})
  )
  expect(amounts).toEqual(['No traps', 'One trap', 'Nine traps', '10 traps'])
})

test('a measure without a value says why', () => {
  expect(formatAmount(notDefined('only one site'))).toBe('not defined (only one site)')
  expect(formatInterval(notDefined('only one site'))).toBeUndefined()
})
