import type {Quantity} from '../model/quantity.ts'
import type {AbundanceCounts} from './frequency-counts.ts'

/**
 * Gini-Simpson index without bias: the probability that two individuals drawn without replacement are of different
 * species, 0 to 1.
 *
 * Formula: 1 - sum X (X-1) / (n (n-1)).
 *
 * Source: Simpson 1949, Nature 163:688, as one minus his estimator.
 *
 * Edge cases: fewer than two individuals have none; all singletons have 1.
 *
 * @example giniSimpsonUnbiased(frequencyCounts([2, 2])) // => {value: 0.66666667}
 * @example giniSimpsonUnbiased(frequencyCounts([1])) // => {notDefined: 'a pair of individuals is needed'}
 */
export function giniSimpsonUnbiased({classes, size}: AbundanceCounts): Quantity {
  if (size < 2) return {notDefined: 'a pair of individuals is needed'}
  const pairs = classes.reduce((sum, {count, species}) => sum + species * count * (count - 1), 0)
  return {value: 1 - pairs / (size * (size - 1))}
}
