import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {readCount, readNumber} from '../../src/parse/read-number.ts'

describe('numbers', () => {
  test.each([
    ['12', 12],
    ['-3.5', -3.5],
    ['12,5', 12.5],
    ['1 234', 1234],
    ['1\u00a0234,5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['0.125', 0.125],
    ['38.895217', 38.895217],
    ['\u22123', -3],
    ['1e3', 1000]
  ])('%s is %d', (text, value) => {
    expect(readNumber(text, undefined)).toEqual({value})
  })
  test('one mark and three digits are ambiguous until the study says which', () => {
    expect(readNumber('1.234', undefined)).toMatchObject({code: 'ambiguous-number'})
    expect(readNumber('1,234', undefined)).toMatchObject({code: 'ambiguous-number'})
    expect(readNumber('1.234', 'point')).toEqual({value: 1.234})
    expect(readNumber('1.234', 'comma')).toEqual({value: 1234})
    expect(readNumber('1,234', 'comma')).toEqual({value: 1.234})
    expect(readNumber('1,234', 'point')).toEqual({value: 1234})
  })
  test.each(['', 'x', '12*', '1.2.3', '--1', '1 23 4', 'NaN', 'Infinity', '0x10'])(
    '%s is no number',
    (text) => {
      expect(readNumber(text, undefined)).toMatchObject({code: 'unreadable-number'})
    }
  )
})

describe('counts', () => {
  test('beyond plain digits only `1 234` and `12.0` are certain', () => {
    expect(readCount('12', undefined)).toEqual({value: 12})
    expect(readCount('0', undefined)).toEqual({value: 0})
    expect(readCount('1 234', undefined)).toEqual({value: 1234})
    expect(readCount('12.0', undefined)).toEqual({value: 12})
  })
  test.each(['c. 30', '>100', '12*', 'x', 'present', '2.5', '-1', 'NA', '3 or 4'])(
    '%s is not a count',
    (text) => {
      expect(readCount(text, undefined)).toMatchObject({code: 'count-not-whole'})
    }
  )
  test('every whole number reads back', () => {
    fc.assert(
      fc.property(fc.nat({max: 999_999_999}), (value) => {
        expect(readCount(String(value), undefined)).toEqual({value})
      })
    )
  })
})
