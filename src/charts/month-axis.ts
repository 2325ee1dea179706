/** A temporal axis in whole months, all moments in milliseconds since 1970-01-01 UTC. */
export interface MonthAxis {
  readonly domain: readonly [number, number]
  /** Starts of the months (or years) that bear a label. */
  readonly ticks: readonly number[]
  /** Expression of the chart language that makes the label of a tick. */
  readonly labelExpression: string
  /** Pixels by which a label stands right of its tick, so that it names the time between two ticks. */
  readonly labelOffset: number
  readonly title: string
}

const letter = "substring('JFMAMJJASOND', utcmonth(datum.value), utcmonth(datum.value) + 1)"
/** The smallest distance in pixels between the letters of two months. */
const letterRoom = 11

/** The start of a day, `2026-06-14`. */
export function momentOf(isoDay: string): number {
  return Date.parse(`${isoDay}T00:00:00Z`)
}

/**
 * An axis from the start of the first month to the end of the last, with the first letters of months as ticks; of
 * every third month or of years, where the span is too long for all.
 */
export function monthAxis(days: readonly string[], width: number): MonthAxis {
  const moments = days.map(momentOf)
  const [first, last] = [new Date(Math.min(...moments)), new Date(Math.max(...moments))]
  const [firstMonth, lastMonth] = [first, last].map(
    (date) => date.getUTCFullYear() * 12 + date.getUTCMonth()
  ) as [number, number]
  const months = Array.from({length: lastMonth - firstMonth + 1}, (_, index) => firstMonth + index)
  const monthWidth = width / months.length
  const every = monthWidth >= letterRoom ? 1 : monthWidth * 3 >= letterRoom ? 3 : 12
  const years = [first.getUTCFullYear(), last.getUTCFullYear()] as const
  const span = years[0] === years[1] ? `${years[0]}` : `${years[0]} to ${years[1]}`
  return {
    domain: [startOf(firstMonth), startOf(lastMonth + 1)],
    ticks: months.filter((month) => month % every === 0).map(startOf),
    labelExpression: every === 12 ? 'utcyear(datum.value)' : letter,
    labelOffset: (monthWidth * every) / 2,
    title: every === 12 ? 'year' : `months of ${span}`
  }
}

const startOf = (month: number) => Date.UTC(Math.floor(month / 12), month % 12, 1)
