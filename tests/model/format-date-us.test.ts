import {expect, test} from 'vitest'
import {formatDate, formatDates, statedLanguage} from '../../src/model/format-date.ts'

test('American English puts the month first and a comma before the year', () => {
  expect(formatDate('2026-06-04T14:05', 'en-US')).toBe('June 4, 2026')
  expect(formatDate('last week', 'en-US')).toBeUndefined()
})

test.each([
  ['2026-06-14', '2026-06-28', 'June 14 to 28, 2026'],
  ['2026-05-28', '2026-06-11', 'May 28 to June 11, 2026'],
  ['2025-12-28', '2026-01-03', 'December 28, 2025 to January 3, 2026'],
  ['2026-06-14', '2026-06-14', 'June 14, 2026']
])('from %s to %s is %s in American English', (from, to, text) => {
  expect(formatDates(from, to, 'en-US')).toBe(text)
})

test('a study that states no language, or one that is not known, is in British English', () => {
  expect(statedLanguage({report: {language: 'en-US'}})).toBe('en-US')
  for (const stated of [{}, {report: null}, {report: {}}, {report: {language: 'fr'}}])
    expect(statedLanguage(stated)).toBe('en-GB')
})
