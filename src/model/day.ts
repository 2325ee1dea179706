/**
 * Calendar days and clock times without any time zone: a trap is opened on a day of its own place, and
 * neither the reader's zone nor daylight saving may move it. Days are counted from 1970-01-01.
 */
export type Day = number

/** A day, with a time of day where one was written. */
export interface Moment {
  readonly day: Day
  /** Minutes after midnight by the clock at the site; absent when only the day is known. */
  readonly minutes?: number
  /** Minutes east of UTC, only when the text carried an offset. */
  readonly offsetMinutes?: number
}

const millisecondsPerDay = 86_400_000

/** The day of a year, month (1 to 12) and day of month, or undefined when the calendar has no such day. */
export function dayOf(year: number, month: number, dayOfMonth: number): Day | undefined {
  const date = new Date(Date.UTC(year, month - 1, dayOfMonth))
  // The calendar rolls 30 February over to March; reading the parts back shows it.
  const exists =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === dayOfMonth
  return exists ? date.getTime() / millisecondsPerDay : undefined
}

/** Year, month (1 to 12) and day of month of a day. */
export function partsOf(day: Day): {
  readonly year: number
  readonly month: number
  readonly dayOfMonth: number
} {
  const date = new Date(day * millisecondsPerDay)
  return {year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, dayOfMonth: date.getUTCDate()}
}

/** `2026-06-14`. */
export function isoDay(day: Day): string {
  return new Date(day * millisecondsPerDay).toISOString().slice(0, 10)
}

/** `2026-06-14` or `2026-06-14T14:05` or `2026-06-14T14:05+02:00`. */
export function isoMoment(moment: Moment): string {
  if (moment.minutes === undefined) return isoDay(moment.day)
  const offset = moment.offsetMinutes
  const zone = offset === undefined ? '' : `${offset < 0 ? '-' : '+'}${clock(Math.abs(offset))}`
  return `${isoDay(moment.day)}T${clock(moment.minutes)}${zone}`
}

/**
 * Nights from one moment to another, in decimal days. With offsets on both sides it is elapsed time; without,
 * clock time, so that a change to or from summer time never changes effort.
 */
export function daysBetween(from: Moment, to: Moment): number {
  return daysSinceEpoch(to, from) - daysSinceEpoch(from, to)
}

function daysSinceEpoch(moment: Moment, other: Moment): number {
  const bothHaveOffsets = moment.offsetMinutes !== undefined && other.offsetMinutes !== undefined
  const shift = bothHaveOffsets ? (moment.offsetMinutes ?? 0) : 0
  return moment.day + ((moment.minutes ?? 0) - shift) / 1440
}

function clock(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
}
