import {dayOf, isoDay} from '../../src/model/day.ts'

export interface Round {
  readonly round: string
  /** From 0; the season curves of the taxa are read by it. */
  readonly index: number
  readonly opened: string
  readonly collected: string
}

export const nightsPerRound = 14
const firstOpened = dayOf(2025, 4, 14) ?? 0

/** ISO day, so many days after the traps were first opened. */
export function seasonDay(nights: number): string {
  return isoDay(firstOpened + nights)
}

/** A week of settling before the traps were opened. */
export const installed = seasonDay(-7)

/** Eight rounds, each opened on the day on which the one before was collected. */
export const rounds: readonly Round[] = Array.from({length: 8}, (_, index) => ({
  round: `R${index + 1}`,
  index,
  opened: seasonDay(index * nightsPerRound),
  collected: seasonDay((index + 1) * nightsPerRound)
}))

export const removed = seasonDay(rounds.length * nightsPerRound)
