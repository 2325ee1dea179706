import type {Quantity} from '../model/quantity.ts'
import {chaoLowerBound} from './chao-lower-bound.ts'
import type {IncidenceCounts} from './frequency-counts.ts'

/**
 * Chao2, a lower bound of the number of species from occurrences in sampling units, with standard error and
 * log-normal interval.
 *
 * Formula: S + k Q1^2 / (2 Q2), or S + k Q1 (Q1-1) / 2 where Q2 = 0; k = (T-1)/T. Variance as for Chao1 with Q for f
 * and T for n.
 *
 * Source: Chao 1987, Biometrics 43:783-791.
 *
 * Edge cases: no occurrence has none; one sampling unit gives S (k = 0); fewer than five duplicates carry a caution
 * that says what one more would do.
 *
 * @example chao2(incidenceCounts([1, 1, 1, 1, 2, 2, 2, 2, 2, 5], 8)).value // => 11.4
 * @example chao2(incidenceCounts([], 8)) // => {notDefined: 'no species was found in any sampling unit'}
 */
export function chao2(sample: IncidenceCounts, confidence?: number): Quantity {
  return chaoLowerBound(sample, confidence)
}
