import type {Quantity} from '../model/quantity.ts'
import {type AbundanceCounts, emptyReason} from './frequency-counts.ts'

/**
 * Berger-Parker dominance: the share of the commonest species among the individuals, 0 to 1.
 *
 * Formula: max X / n.
 *
 * Source: Berger & Parker 1970, Science 168:1345-1347.
 *
 * Edge cases: an empty sample has none; one species has 1.
 *
 * @example bergerParker(frequencyCounts([6, 3, 1])) // => {value: 0.6}
 * @example bergerParker(frequencyCounts([])) // => {notDefined: 'no individuals were caught'}
 */
export function bergerParker({classes, size, kind}: AbundanceCounts): Quantity {
  const commonest = classes.at(-1)
  return commonest ? {value: commonest.count / size} : {notDefined: emptyReason(kind)}
}
