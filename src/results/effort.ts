import type {EffortResult} from '../model/results.ts'
import {counted, share, trapNights, words} from './counted.ts'
import type {Part} from './parts.ts'
import type {PlannedNights} from './planned-nights.ts'

/** Trap-nights planned, achieved and lost in one part of the study. */
export function effortResult({where, traps, round, exposures}: Part, plan: PlannedNights): EffortResult {
  let exposed = 0
  let net = 0
  let unsorted = 0
  for (const {effort} of exposures) {
    exposed += effort.exposed ?? 0
    net += effort.net
    unsorted += effort.unsorted
  }
  const planned = traps.reduce((sum, {index}) => {
    return sum + (round === undefined ? plan.ofTrap(index) : plan.ofTrapInRound(index, round.index))
  }, 0)
  const lost = planned - net - unsorted
  return {
    exposures: counted(`Exposures on record, ${where}`, exposures.length, words.exposures),
    planned: trapNights(`Trap-nights planned, ${where}`, planned),
    exposed: trapNights(`Trap-nights between opening and collection, ${where}`, exposed),
    net: trapNights(`Trap-nights that count, ${where}`, net),
    unsorted: trapNights(`Trap-nights of samples not sorted yet, ${where}`, unsorted),
    lost: trapNights(`Trap-nights lost, ${where}`, lost),
    shareLost: share(
      `Share of planned trap-nights lost, ${where}`,
      lost,
      planned,
      'no trap-nights were planned'
    )
  }
}
