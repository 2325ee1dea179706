import type {Quantity} from '../model/quantity.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'
import {observedEntropy} from './hill-observed.ts'

/**
 * Shannon entropy H as observed, natural logarithm, in nats.
 *
 * Formula: H = -sum p ln p.
 *
 * Source: Shannon 1948, Bell Syst. Tech. J. 27:379-423.
 *
 * Edge cases: an empty sample has none; one species has 0. Too low for small samples: the estimate is in
 * shannon-asymptotic.
 *
 * @example shannon(frequencyCounts([5, 5])) // => {value: 0.69314718}
 * @example shannon(frequencyCounts([7])) // => {value: 0}
 * @example shannon(frequencyCounts([])) // => {notDefined: 'no individuals were caught'}
 */
export function shannon(sample: FrequencyCounts): Quantity {
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  return {value: observedEntropy(sample)}
}
