import {daysBetween, type Moment} from '../model/day.ts'
import type {Exposure} from '../model/study.ts'

/** How nights are counted in the whole study: one study never mixes the two. */
export type NightsBasis = 'dates' | 'clock times'

/** Clock times only where every exposure with an opening has both; else whole days between dates. */
export function nightsBasis(exposures: readonly Exposure[]): NightsBasis {
  const complete = exposures.filter(({opened}) => opened !== undefined)
  const timed = complete.every(({opened, collected}) => hasTime(opened) && hasTime(collected))
  return complete.length > 0 && timed ? 'clock times' : 'dates'
}

/** Whether times of some exposures stay unused because others have none. */
export function hasUnusedTimes(exposures: readonly Exposure[], basis: NightsBasis): boolean {
  return basis === 'dates' && exposures.some(({opened, collected}) => hasTime(opened) || hasTime(collected))
}

/** Nights between two moments: whole by dates, decimal by clock times. Never below 0. */
export function nightsBetween(from: Moment, to: Moment, basis: NightsBasis): number {
  const timed = basis === 'clock times' && hasTime(from) && hasTime(to)
  return Math.max(0, timed ? daysBetween(from, to) : to.day - from.day)
}

function hasTime(moment: Moment | undefined): boolean {
  return moment?.minutes !== undefined
}
