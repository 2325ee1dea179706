import type {Quantity} from '../model/quantity.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'

/**
 * Gini-Simpson index as observed: the probability that two individuals drawn with replacement are of different
 * species, 0 to 1.
 *
 * Formula: 1 - sum p^2.
 *
 * Source: Simpson 1949, Nature 163:688, as one minus his index.
 *
 * Edge cases: an empty sample has none; one species has 0.
 *
 * @example giniSimpson(frequencyCounts([5, 5])) // => {value: 0.5}
 * @example giniSimpson(frequencyCounts([])) // => {notDefined: 'no individuals were caught'}
 */
export function giniSimpson({classes, records, kind}: FrequencyCounts): Quantity {
  if (records === 0) return {notDefined: emptyReason(kind)}
  return {value: 1 - classes.reduce((sum, {count, species}) => sum + species * (count / records) ** 2, 0)}
}
