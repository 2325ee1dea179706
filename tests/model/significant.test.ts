import fc from 'fast-check'
import {expect, test} from 'vitest'
import {fixed, significant} from '../../src/model/significant.ts'

test.each([
  [0, '0'],
  [12, '12.0'],
  [14.359375, '14.4'],
  [512.333, '512'],
  [999.6, '1,000'],
  [1234.5, '1,230'],
  [0.04567, '0.0457'],
  [0.00099999, '0.00100'],
  [-2.5, '\u22122.50'],
  [1234567, '1,230,000']
])('%f to three significant figures is %s', (value, text) => {
  expect(significant(value, 3)).toBe(text)
})

test('a number with fixed decimals has its thousands parted and no minus before nought', () => {
  expect(fixed(1593, 0)).toBe('1,593')
  expect(fixed(20.46, 1)).toBe('20.5')
  expect(fixed(-0.01, 1)).toBe('0.0')
})

test('rounding to three figures changes a number by at most half a unit of the third', () => {
  fc.assert(
    fc.property(fc.double({min: 1e-6, max: 1e9, noNaN: true}), (value) => {
      const printed = Number(significant(value, 3).replaceAll(',', ''))
      expect(Math.abs(printed - value)).toBeLessThanOrEqual(value * 0.005000001)
    })
  )
})

test('what is not a finite number is refused', () => {
  expect(() => significant(Number.NaN, 3)).toThrow(RangeError)
  expect(() => significant(1, 0)).toThrow(RangeError)
  expect(() => fixed(Number.POSITIVE_INFINITY, 0)).toThrow(RangeError)
})
