import type {Quantity} from '../model/quantity.ts'
import {chaoLowerBound} from './chao-lower-bound.ts'
import type {AbundanceCounts} from './frequency-counts.ts'

/**
 * Chao1, a lower bound of the number of species from individuals, with standard error and log-normal interval.
 *
 * Formula: S + k f1^2 / (2 f2), or S + k f1 (f1-1) / 2 where f2 = 0; k = (n-1)/n. Variance with r = f1/f2:
 * f2 [k r^2/2 + k^2 r^3 + k^2 r^4/4], or k f1 (f1-1)/2 + k^2 f1 (2 f1-1)^2/4 - k^2 f1^4/(4 Chao1) where f2 = 0.
 *
 * Source: Chao 1984, Scand. J. Stat. 11:265-270; variance and interval Chao 1987, Biometrics 43:783-791.
 *
 * Edge cases: an empty sample has none; nothing to add gives S with the interval [S, S]; fewer than five doubletons
 * carry a caution that says what one more would do.
 *
 * @example chao1(frequencyCounts([4, 2, 2, 2, 2, 2, 1])).value // => 7.0933333
 * @example chao1(frequencyCounts([3, 3])).interval // => {low: 2, high: 2, confidence: 0.95, method: 'log-normal (Chao 1987)'}
 * @example chao1(frequencyCounts([4, 2, 1, 1])).caution // => 'rests on 1 species caught twice; one more such species would make it 5.9'
 * @example chao1(frequencyCounts([])) // => {notDefined: 'no individuals were caught'}
 */
export function chao1(sample: AbundanceCounts, confidence?: number): Quantity {
  return chaoLowerBound(sample, confidence)
}
