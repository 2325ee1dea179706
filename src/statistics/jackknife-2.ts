import type {Quantity} from '../model/quantity.ts'
import {emptyReason, type IncidenceCounts} from './frequency-counts.ts'
import {jackknifeEstimate} from './jackknife-1.ts'

/**
 * Second-order jackknife of the number of species from occurrences in sampling units, with standard error and normal
 * interval.
 *
 * Formula: S + Q1 (2T-3)/T - Q2 (T-2)^2 / (T (T-1)). Variance: sum a_k^2 Q_k - estimate, a_k the weight of Q_k.
 *
 * Source: Burnham & Overton 1978, Biometrika 65:625-633; 1979, Ecology 60:927-936.
 *
 * Edge cases: not defined without any occurrence or with one sampling unit. With many duplicates it can lie below S,
 * and then its interval may start there.
 *
 * @example jackknife2(incidenceCounts([1, 1, 2, 4], 5)).value // => 6.35
 * @example jackknife2(incidenceCounts([1, 1], 1)) // => {notDefined: 'the jackknife leaves out units of at least two'}
 */
export function jackknife2(sample: IncidenceCounts, confidence?: number): Quantity {
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  const units = sample.size
  if (units < 2) return {notDefined: 'the jackknife leaves out units of at least two'}
  const ofUniques = 1 + (2 * units - 3) / units
  const ofDuplicates = 1 - (units - 2) ** 2 / (units * (units - 1))
  return jackknifeEstimate(sample, ofUniques, ofDuplicates, confidence)
}
