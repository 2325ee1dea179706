import {expect, test} from 'vitest'
import {formatDate, formatDates} from '../../src/model/format-date.ts'

test('a day is written as a person writes it', () => {
  expect(formatDate('2026-06-04')).toBe('4 June 2026')
  expect(formatDate('2026-06-04T14:05')).toBe('4 June 2026')
  expect(formatDate('last week')).toBeUndefined()
  expect(formatDate('2026-13-04')).toBeUndefined()
})

test.each([
  ['2026-06-14', '2026-06-28', '14 to 28 June 2026'],
  ['2026-05-28', '2026-06-11', '28 May to 11 June 2026'],
  ['2025-12-28', '2026-01-03', '28 December 2025 to 3 January 2026'],
  ['2026-06-14', '2026-06-14', '14 June 2026']
])('from %s to %s is %s', (from, to, text) => {
  expect(formatDates(from, to)).toBe(text)
})
