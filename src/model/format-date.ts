const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December'
]

interface CalendarDay {
  readonly year: string
  readonly month: string
  readonly dayOfMonth: string
}

/** Languages of the documents; each writes dates its own way. */
export type Language = 'en-GB' | 'en-US'

/** The language that a study states under `report`, from what study.yaml says; en-GB where it states none. */
export function statedLanguage(stated: Readonly<Record<string, unknown>>): Language {
  const {report} = stated
  const isObject = typeof report === 'object' && report !== null && 'language' in report
  return isObject && report.language === 'en-US' ? 'en-US' : 'en-GB'
}

/**
 * `2026-06-14` (a time after it is left out) as `14 June 2026`, or `June 14, 2026` in American English; undefined for
 * anything that is no calendar day.
 */
export function formatDate(isoDay: string, language: Language = 'en-GB'): string | undefined {
  const day = read(isoDay)
  return day && full(day, language)
}

/**
 * `14 to 28 June 2026`, `28 May to 11 June 2026`, `28 December 2025 to 3 January 2026`; in American English `June 14
 * to 28, 2026`, `May 28 to June 11, 2026`, `December 28, 2025 to January 3, 2026`. One date where both are the same.
 */
export function formatDates(
  fromIsoDay: string,
  toIsoDay: string,
  language: Language = 'en-GB'
): string | undefined {
  const from = read(fromIsoDay)
  const to = read(toIsoDay)
  if (!from || !to) return undefined
  const end = full(to, language)
  if (from.year !== to.year) return `${full(from, language)} to ${end}`
  if (from.month !== to.month) return `${withinYear(from, language)} to ${end}`
  if (from.dayOfMonth === to.dayOfMonth) return end
  return language === 'en-US'
    ? `${withinYear(from, language)} to ${to.dayOfMonth}, ${to.year}`
    : `${from.dayOfMonth} to ${end}`
}

function full(day: CalendarDay, language: Language): string {
  return `${withinYear(day, language)}${language === 'en-US' ? ',' : ''} ${day.year}`
}

function withinYear({dayOfMonth, month}: CalendarDay, language: Language): string {
  return language === 'en-US' ? `${month} ${dayOfMonth}` : `${dayOfMonth} ${month}`
}

function read(isoDay: string): CalendarDay | undefined {
  const [, year, month, dayOfMonth] = /^(\d{4})-(\d\d)-(\d\d)(?:T.*)?$/.exec(isoDay) ?? []
  const name = months[Number(month) - 1]
  if (year === undefined || name === undefined || dayOfMonth === undefined) return undefined
  return {year, month: name, dayOfMonth: String(Number(dayOfMonth))}
}
