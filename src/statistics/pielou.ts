import type {Quantity} from '../model/quantity.ts'
import {type AbundanceCounts, emptyReason} from './frequency-counts.ts'
import {observedEntropy} from './hill-observed.ts'

/**
 * Pielou's evenness J as observed, 0 to 1.
 *
 * Formula: J = H / ln S, H the Shannon entropy.
 *
 * Source: Pielou 1966, J. Theor. Biol. 13:131-144.
 *
 * Edge cases: an empty sample and one of a single species have none. It depends on the size of the sample through
 * S, which is why it is a footnote.
 *
 * @example pielou(frequencyCounts([5, 5, 5])) // => {value: 1}
 * @example pielou(frequencyCounts([9])) // => {notDefined: 'a single species has no evenness'}
 */
export function pielou(sample: AbundanceCounts): Quantity {
  if (sample.size === 0) return {notDefined: emptyReason(sample.kind)}
  if (sample.species === 1) return {notDefined: 'a single species has no evenness'}
  return {value: observedEntropy(sample) / Math.log(sample.species)}
}
