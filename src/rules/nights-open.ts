import type {Visit} from './fieldwork.ts'

/** On how many nights from one day to another at least so many of the given visits were open. */
export type NightsOpen = (from: number, to: number) => number

/**
 * Counted from the days on which visits begin and end, so that a mistyped year costs no more than a right one.
 * Time: n log n in the visits, log n for each question.
 */
export function nightsOpen(visits: readonly Visit[], atLeast: number): NightsOpen {
  const changes = new Map<number, number>()
  const change = (day: number, by: number) => changes.set(day, (changes.get(day) ?? 0) + by)
  for (const {exposure} of visits) {
    if (exposure.opened === undefined) continue
    change(exposure.opened.day, 1)
    change(exposure.collected.day, -1)
  }
  const days = [...changes.keys()].sort((a, b) => a - b)
  const busy: boolean[] = []
  const nightsBefore: number[] = []
  let open = 0
  let nights = 0
  for (const [at, day] of days.entries()) {
    if (at > 0 && busy[at - 1]) nights += day - days[at - 1]!
    open += changes.get(day)!
    nightsBefore.push(nights)
    busy.push(open >= atLeast)
  }
  const until = (day: number): number => {
    const at = lastAtOrBefore(days, day)
    return at < 0 ? 0 : nightsBefore[at]! + (busy[at] ? day - days[at]! : 0)
  }
  return (from, to) => until(to) - until(from)
}

function lastAtOrBefore(days: readonly number[], day: number): number {
  let low = 0
  let high = days.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (days[middle]! <= day) low = middle + 1
    else high = middle
  }
  return low - 1
}
