import {type Day, daysBetween, type Moment} from '../model/day.ts'
import type {Exposure} from '../model/study.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import type {NightsBasis} from './exposure-nights.ts'

export interface RoundInUse {
  readonly index: number
  readonly id: string
  readonly firstOpened: Day | undefined
  readonly lastCollected: Day
}

/** The rounds of the season in the order of their first collection, and which round an exposure or a day belongs to. */
export interface SeasonRounds {
  readonly rounds: readonly RoundInUse[]
  readonly ofExposure: (exposure: Exposure) => RoundInUse
  /** The round that was running on this day: the first one not wholly collected before it, else the last. */
  readonly ofDay: (day: Day) => RoundInUse | undefined
  readonly byId: ReadonlyMap<string, RoundInUse>
}

/**
 * Rounds as the `round` column names them, where every exposure with an opening has one. Else they follow from
 * the dates: exposures in the order of collection, and a new round where one was opened on or after the earliest
 * collection of the current round. An exposure that nothing places goes to the round running when it was collected.
 */
export function seasonRounds(exposures: readonly Exposure[], basis: NightsBasis): SeasonRounds {
  const dated = exposures.filter(({opened}) => opened !== undefined)
  const named = (dated.length > 0 ? dated : exposures).every(({round}) => round !== undefined)
  const members = named ? roundsByName(exposures) : roundsByDates(dated, basis)
  if (members.size === 0 && exposures.length > 0) members.set('1', [...exposures])
  const ordered = [...members].map(([id, group]) => ({id, ...windowOf(group)}))
  // Rounds from dates are found in order; names say nothing of order.
  if (named) ordered.sort(byFirstCollection)
  const rounds = ordered.map(({id, firstOpened, lastCollected}, index): RoundInUse => {
    return {index, id, firstOpened, lastCollected}
  })
  const byId = new Map(rounds.map((round) => [round.id, round]))
  const placed = new Map<Exposure, RoundInUse>()
  for (const [id, group] of members) for (const exposure of group) placed.set(exposure, byId.get(id)!)
  const ofDay = (day: Day) => rounds.find(({lastCollected}) => lastCollected >= day) ?? rounds.at(-1)
  return {
    rounds,
    byId,
    ofDay,
    ofExposure: (exposure) => placed.get(exposure) ?? ofDay(exposure.collected.day)!
  }
}

function roundsByName(exposures: readonly Exposure[]): Map<string, Exposure[]> {
  const members = new Map<string, Exposure[]>()
  for (const exposure of exposures) {
    if (exposure.round === undefined) continue
    const group = members.get(exposure.round)
    if (group === undefined) members.set(exposure.round, [exposure])
    else group.push(exposure)
  }
  return members
}

function roundsByDates(dated: readonly Exposure[], basis: NightsBasis): Map<string, Exposure[]> {
  const members = new Map<string, Exposure[]>()
  let group: Exposure[] = []
  let earliest: Moment | undefined
  // Among those collected together the longest comes first: it belongs to the round that has already begun.
  const byCollection = [...dated].sort(
    (a, b) => apart(b.collected, a.collected, basis) || apart(b.opened!, a.opened!, basis)
  )
  for (const exposure of byCollection) {
    if (earliest === undefined || apart(earliest, exposure.opened!, basis) >= 0) {
      earliest = exposure.collected
      group = []
      members.set(`${members.size + 1}`, group)
    }
    group.push(exposure)
  }
  return members
}

function apart(from: Moment, to: Moment, basis: NightsBasis): number {
  return basis === 'clock times' ? daysBetween(from, to) : to.day - from.day
}

interface Window {
  readonly firstOpened: Day | undefined
  readonly firstCollected: Day
  readonly lastCollected: Day
}

function windowOf(group: readonly Exposure[]): Window {
  let firstOpened: Day | undefined
  let firstCollected = Number.POSITIVE_INFINITY
  let lastCollected = Number.NEGATIVE_INFINITY
  for (const {opened, collected} of group) {
    if (opened !== undefined) firstOpened = Math.min(firstOpened ?? opened.day, opened.day)
    firstCollected = Math.min(firstCollected, collected.day)
    lastCollected = Math.max(lastCollected, collected.day)
  }
  return {firstOpened, firstCollected, lastCollected}
}

function byFirstCollection(a: Window & {readonly id: string}, b: Window & {readonly id: string}): number {
  const opened = (a.firstOpened ?? a.firstCollected) - (b.firstOpened ?? b.firstCollected)
  return a.firstCollected - b.firstCollected || opened || codeUnitOrder(a.id, b.id)
}
