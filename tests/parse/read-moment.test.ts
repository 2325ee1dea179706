import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {daysBetween, isoMoment, partsOf} from '../../src/model/day.ts'
import {type DateOrder, readMoment} from '../../src/parse/read-moment.ts'

function read(text: string, order?: DateOrder): string {
  const reading = readMoment(text, order)
  return 'value' in reading ? isoMoment(reading.value) : reading.code
}

describe('dates that can mean one thing only', () => {
  test.each([
    ['2026-05-31', '2026-05-31'],
    ['2026/5/31', '2026-05-31'],
    ['20260531', '2026-05-31'],
    ['31/05/2026', '2026-05-31'],
    ['31.5.2026', '2026-05-31'],
    ['31-5-26', '2026-05-31'],
    ['5/31/26', '2026-05-31'],
    ['5/5/2026', '2026-05-05'],
    ['31 May 2026', '2026-05-31'],
    ['31-May-26', '2026-05-31'],
    ['1st June 2026', '2026-06-01'],
    ['May 31, 2026', '2026-05-31'],
    ['31. Mai 2026', '2026-05-31'],
    ['31 mai 2026', '2026-05-31'],
    ['31 de mayo de 2026', '2026-05-31'],
    ['1er juin 2026', '2026-06-01'],
    ['5. März 2026', '2026-03-05'],
    ['30 déc. 2025', '2025-12-30'],
    ['31.v.2026', '2026-05-31'],
    ['31 VIII 2026', '2026-08-31'],
    ['Sun 31 May 2026', '2026-05-31'],
    ['Sunday, May 31, 2026', '2026-05-31'],
    ['mar. 26 mai 2026', '2026-05-26'],
    ['26 mar 2026', '2026-03-26'],
    ['2026-05-31 14h', '2026-05-31T14:00'],
    ['2026-05-31 14h05', '2026-05-31T14:05'],
    ['May 31 2026 at 14:05', '2026-05-31T14:05'],
    ['2026-05-31 14:05', '2026-05-31T14:05'],
    ['2026-05-31T14:05:09', '2026-05-31T14:05'],
    ['31/05/2026 2.05 pm', '2026-05-31T14:05'],
    ['31 May 2026, 12:30 am', '2026-05-31T00:30'],
    ['2026-05-31T14:05+02:00', '2026-05-31T14:05+02:00'],
    ['2026-05-31T14:05Z', '2026-05-31T14:05+00:00']
  ])('%s is %s', (text, expected) => {
    expect(read(text)).toBe(expected)
  })
})

describe('dates that can mean two things', () => {
  test('are ambiguous until the study says which, and both readings are named', () => {
    expect(readMoment('04/05/2026', undefined)).toEqual({
      code: 'ambiguous-date',
      message: '`04/05/2026` may be 2026-05-04 or 2026-04-05'
    })
    expect(read('04/05/2026', 'dmy')).toBe('2026-05-04')
    expect(read('04/05/2026', 'mdy')).toBe('2026-04-05')
    expect(read('4.5.26')).toBe('ambiguous-date')
  })
  test('are not read against what the study says', () => {
    const reading = readMoment('5/31/26', 'dmy')
    expect(reading).toMatchObject({code: 'unreadable-date'})
    expect('remedy' in reading && reading.remedy).toContain('`dates: dmy`')
  })
})

describe('what is no date', () => {
  test.each([
    '2026-02-30',
    '31.6.2026',
    'June',
    'yesterday',
    '2026',
    '14:05',
    '13/13/2026',
    '2026-05-31 25:00'
  ])('%s', (text) => {
    expect(read(text)).toBe('unreadable-date')
  })
  test.each([
    [
      '46173',
      '`46173` is a number; as a spreadsheet counts days it would be 2026-05-31',
      /format the column as a date/
    ],
    ['31.5.', '`31.5.` is a day without its year', /write the year too/],
    ['31-May', '`31-May` is a day without its year', /write the year too/],
    ['Sun 31 May', '`Sun 31 May` is a day without its year', /write the year too/],
    ['May 2026', '`May 2026` is a month, not a day', /write the day/],
    ['14:05', '`14:05` is a time without a day', /write the day/],
    ['18-31 May 2026', '`18-31 May 2026` is more than one day', /`opened`.*`collected`/],
    ['1-8 May 2025', '`1-8 May 2025` is more than one day', /`opened`.*`collected`/],
    ['4.5.2026-18.5.2026', '`4.5.2026-18.5.2026` is more than one day', /`opened`.*`collected`/],
    ['2026-05-04/2026-05-18', '`2026-05-04/2026-05-18` is more than one day', /`opened`.*`collected`/],
    ['31 Junk 2026', '`31 Junk 2026` is not a date', /`Junk` is no month that is known here/],
    ['30 jui 2026', '`30 jui 2026` is not a date', /`jui` is no month/],
    ['NA', '`NA` is not a date', /leave the cell empty/],
    ['########', '`########` is not a date', /widen the column/]
  ])('%s says what it is instead', (text, message, remedy) => {
    expect(readMoment(text, 'dmy')).toMatchObject({
      code: 'unreadable-date',
      message,
      remedy: expect.stringMatching(remedy)
    })
  })
})

test('every day reads back from every way of writing it that is not ambiguous', () => {
  fc.assert(
    fc.property(fc.integer({min: 0, max: 40_000}), (day) => {
      const {year, month, dayOfMonth} = partsOf(day)
      const two = (value: number): string => String(value).padStart(2, '0')
      expect(readMoment(`${year}-${two(month)}-${two(dayOfMonth)}`, undefined)).toEqual({value: {day}})
      expect(readMoment(`${dayOfMonth}.${month}.${year}`, 'dmy')).toEqual({value: {day}})
      expect(readMoment(`${month}/${dayOfMonth}/${year}`, 'mdy')).toEqual({value: {day}})
    })
  )
})

test('clock times without offset are never shifted by daylight saving; times with offset are elapsed time', () => {
  // Clocks went forward in central Europe on 29 March 2026.
  const value = (text: string) => {
    const reading = readMoment(text, undefined)
    if (!('value' in reading)) throw new Error(reading.message)
    return reading.value
  }
  expect(daysBetween(value('2026-03-27 12:00'), value('2026-03-30 12:00'))).toBe(3)
  expect(daysBetween(value('2026-03-27T12:00+01:00'), value('2026-03-30T12:00+02:00'))).toBeCloseTo(2.958, 3)
})
