import {dayOf, isoDay, type Moment} from '../model/day.ts'
import {dateTrouble} from './date-remedy.ts'
import {monthNumber, withoutWeekday} from './month-names.ts'

export type DateOrder = 'dmy' | 'mdy' | undefined

export type MomentReading =
  | {readonly value: Moment}
  | {readonly code: 'ambiguous-date' | 'unreadable-date'; readonly message: string; readonly remedy?: string}

/**
 * A day, with or without a time, as people and spreadsheets write it: `2026-05-31`, `31/05/2026`, `31.5.2026`,
 * `5/31/26`, `31 May 2026`, `31. Mai 2026`, `31.v.2026`, with `14:05`, `2.05 pm`, seconds or an offset.
 *
 * Day and month are never guessed: where both could be months and the study does not say `dates: dmy` or `mdy`,
 * the date is ambiguous and both readings are named.
 */
export function readMoment(text: string, order: DateOrder): MomentReading {
  const parts =
    /^(.*?)(?:(?:\s+at\s+|[T,\s]+)(\d{1,2}[:.h]\d{2}(?:[:.]\d{2}(?:\.\d+)?)?\s*(?:[ap]\.?m\.?)?|\d{1,2}\s*(?:[ap]\.?m\.?|h))\s*(Z|UTC|[+-]\d{2}:?\d{2})?)?$/i.exec(
      text
    )
  const [, dayText = text, timeText, zoneText] = parts ?? []
  const day = readDay(dayText.trim(), order)
  if ('code' in day)
    return day.code === 'unreadable-date'
      ? {...day, message: day.message.replace(/^`[^`]*`/, () => `\`${text}\``)}
      : day
  if (timeText === undefined) return {value: {day: day.value}}
  const minutes = readTime(timeText)
  if (minutes === undefined) return unreadable(text, 'a time is written as 14:05')
  const offset = zoneText === undefined ? undefined : readOffset(zoneText)
  return {value: {day: day.value, minutes, ...(offset !== undefined && {offsetMinutes: offset})}}
}

type DayReading = {readonly value: number} | Extract<MomentReading, {readonly code: string}>

function readDay(text: string, order: DateOrder): DayReading {
  const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text) ?? /^(\d{4})(\d{2})(\d{2})$/.exec(text)
  if (yearFirst) return onCalendar(text, Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3]))
  const named =
    /^(\d{1,2})(?:st|nd|rd|th|er)?[\s.\-/]*(?:(?:of|de)\s+)?(\p{L}{1,10})\.?[\s.\-/,]*(?:(?:de|del)\s+)?(\d{4}|\d{2})$/iu.exec(
      text
    )
  if (named) return namedDay(text, named[3] ?? '', named[2] ?? '', Number(named[1]))
  const namedFirst = /^(\p{L}{3,10})\.?[\s\-/]*(\d{1,2})(?:st|nd|rd|th)?[\s,\-/]+(\d{4}|\d{2})$/iu.exec(text)
  if (namedFirst) return namedDay(text, namedFirst[3] ?? '', namedFirst[1] ?? '', Number(namedFirst[2]))
  const numeric = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})$/.exec(text)
  if (numeric)
    return readNumericDay(text, Number(numeric[1]), Number(numeric[2]), fullYear(numeric[3] ?? ''), order)
  const bare = withoutWeekday(text)
  if (bare !== undefined) return readDay(bare, order)
  return {code: 'unreadable-date', ...dateTrouble(text)}
}

function namedDay(text: string, year: string, month: string, dayOfMonth: number): DayReading {
  const number = monthNumber(month)
  return number === 0
    ? unreadable(text, `\`${month}\` is no month that is known here; write the day as 2026-05-31`)
    : onCalendar(text, fullYear(year), number, dayOfMonth)
}

function readNumericDay(
  text: string,
  first: number,
  second: number,
  year: number,
  order: DateOrder
): DayReading {
  if (order === 'dmy') return onCalendar(text, year, second, first, 'dmy')
  if (order === 'mdy') return onCalendar(text, year, first, second, 'mdy')
  const dayFirst = dayOf(year, second, first)
  const monthFirst = dayOf(year, first, second)
  if (dayFirst !== undefined && monthFirst !== undefined && dayFirst !== monthFirst) {
    return {
      code: 'ambiguous-date',
      message: `\`${text}\` may be ${isoDay(dayFirst)} or ${isoDay(monthFirst)}`
    }
  }
  const day = dayFirst ?? monthFirst
  return day === undefined ? unreadable(text, 'no calendar has this day; correct it') : {value: day}
}

function onCalendar(
  text: string,
  year: number,
  month: number,
  dayOfMonth: number,
  order?: 'dmy' | 'mdy'
): DayReading {
  const value = dayOf(year, month, dayOfMonth)
  if (value !== undefined) return {value}
  const contradicts = order !== undefined && dayOf(year, dayOfMonth, month) !== undefined
  return unreadable(
    text,
    contradicts
      ? `study.yaml says \`dates: ${order}\`, which this date does not fit; correct one of them`
      : 'no calendar has this day; correct it'
  )
}

function unreadable(text: string, remedy: string): Extract<MomentReading, {readonly code: string}> {
  return {code: 'unreadable-date', message: `\`${text}\` is not a date`, remedy}
}

/** Two-digit years are of this century up to 69: nobody's pitfall season of 2070 is on paper yet. */
function fullYear(text: string): number {
  const year = Number(text)
  return text.length === 4 ? year : year < 70 ? 2000 + year : 1900 + year
}

function readTime(text: string): number | undefined {
  const [, hourText, minuteText = '0', half] =
    /^(\d{1,2})(?:[:.h](\d{2})(?:[:.]\d{2}(?:\.\d+)?)?)?\s*([ap])?/i.exec(text) ?? []
  const hour = Number(hourText)
  const minutes = Number(minuteText)
  if (minutes > 59 || (half === undefined ? hour > 23 : hour < 1 || hour > 12)) return undefined
  const afternoon = half?.toLowerCase() === 'p'
  const hour24 = half === undefined ? hour : (hour % 12) + (afternoon ? 12 : 0)
  return hour24 * 60 + minutes
}

function readOffset(text: string): number {
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(text) ?? []
  return hours === undefined ? 0 : (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes))
}
