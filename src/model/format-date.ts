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

/** `2026-06-14` (a time after it is left out) as `14 June 2026`; undefined for anything that is no calendar day. */
export function formatDate(isoDay: string): string | undefined {
  const day = read(isoDay)
  return day && `${day.dayOfMonth} ${day.month} ${day.year}`
}

/** `14 to 28 June 2026`, `28 May to 11 June 2026`, `28 December 2025 to 3 January 2026`; one date where both are the same. */
export function formatDates(fromIsoDay: string, toIsoDay: string): string | undefined {
  const from = read(fromIsoDay)
  const to = read(toIsoDay)
  if (!from || !to) return undefined
  const end = `${to.dayOfMonth} ${to.month} ${to.year}`
  if (from.year !== to.year) return `${from.dayOfMonth} ${from.month} ${from.year} to ${end}`
  if (from.month !== to.month) return `${from.dayOfMonth} ${from.month} to ${end}`
  return from.dayOfMonth === to.dayOfMonth ? end : `${from.dayOfMonth} to ${end}`
}

function read(isoDay: string): CalendarDay | undefined {
  const [, year, month, dayOfMonth] = /^(\d{4})-(\d\d)-(\d\d)(?:T.*)?$/.exec(isoDay) ?? []
  const name = months[Number(month) - 1]
  if (year === undefined || name === undefined || dayOfMonth === undefined) return undefined
  return {year, month: name, dayOfMonth: String(Number(dayOfMonth))}
}
