import {isDefined} from '../model/quantity.ts'
import {median} from '../statistics/median.ts'
import type {SeasonRecords} from './season-records.ts'

/** Trap-nights that were meant to be, by trap and by trap and round. */
export interface PlannedNights {
  readonly ofTrap: (trap: number) => number
  readonly ofTrapInRound: (trap: number, round: number) => number
}

/**
 * Rounds x nights of the protocol for every trap, where study.yaml states both. Else what is on record: the
 * exposures not closed on purpose, and the median exposure of the round for a trap that is absent from it.
 */
export function plannedNights({study, area, rounds: {rounds}, exposures}: SeasonRecords): PlannedNights {
  const {rounds: roundsPlanned, interval_nights: interval} = study.settings.protocol ?? {}
  if (roundsPlanned !== undefined && interval !== undefined) {
    return {ofTrap: () => roundsPlanned * interval, ofTrapInRound: () => interval}
  }
  const recorded = area.traps.map(() => new Map<number, number>())
  const nightsOfRound = rounds.map((): number[] => [])
  for (const {trap, round, effort} of exposures) {
    if (effort.exposed === undefined) continue
    const ofTrap = recorded[trap.index]!
    ofTrap.set(round.index, (ofTrap.get(round.index) ?? 0) + effort.exposed)
    if (!effort.closed) nightsOfRound[round.index]!.push(effort.exposed)
  }
  const typical = nightsOfRound.map((nights) => {
    const middle = median(nights)
    return isDefined(middle) ? middle.value : 0
  })
  const ofTrapInRound = (trap: number, round: number) => recorded[trap]!.get(round) ?? typical[round]!
  return {
    ofTrapInRound,
    ofTrap: (trap) => rounds.reduce((sum, {index}) => sum + ofTrapInRound(trap, index), 0)
  }
}
