import type {Quantity} from '../model/quantity.ts'
import {normalWithin} from './confidence-interval.ts'
import {emptyReason, type IncidenceCounts} from './frequency-counts.ts'

/**
 * First-order jackknife of the number of species from occurrences in sampling units, with standard error and normal
 * interval.
 *
 * Formula: S + Q1 (T-1)/T. Variance: sum a_k^2 Q_k - estimate, a_k the weight of Q_k in the estimate.
 *
 * Source: Burnham & Overton 1978, Biometrika 65:625-633; 1979, Ecology 60:927-936.
 *
 * Edge cases: not defined without any occurrence or with one sampling unit (the formula would give S and no error, as
 * if nothing could be missing, but there is no sample with a unit left out); without uniques it is S. The interval does
 * not go below S.
 *
 * @example jackknife1(incidenceCounts([1, 1, 2, 4], 5)).value // => 5.6
 * @example jackknife1(incidenceCounts([1, 1], 1)) // => {notDefined: 'the jackknife leaves out one unit of at least two'}
 */
export function jackknife1(sample: IncidenceCounts, confidence?: number): Quantity {
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  if (sample.size < 2) return {notDefined: 'the jackknife leaves out one unit of at least two'}
  const ofUniques = 1 + (sample.size - 1) / sample.size
  return jackknifeEstimate(sample, ofUniques, 1, confidence)
}

/** The estimate with these weights of uniques and duplicates; all other species weigh 1. */
export function jackknifeEstimate(
  sample: IncidenceCounts,
  ofUniques: number,
  ofDuplicates: number,
  confidence?: number
): Quantity {
  const {species, singletons, doubletons} = sample
  const others = species - singletons - doubletons
  const value = ofUniques * singletons + ofDuplicates * doubletons + others
  const squares = ofUniques ** 2 * singletons + ofDuplicates ** 2 * doubletons + others
  const standardError = Math.sqrt(Math.max(0, squares - value))
  return {
    value,
    standardError,
    interval: normalWithin(
      value,
      standardError,
      Math.min(value, species),
      Number.POSITIVE_INFINITY,
      'Burnham & Overton 1978',
      confidence
    )
  }
}
