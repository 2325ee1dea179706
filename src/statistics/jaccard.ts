import type {Quantity} from '../model/quantity.ts'
import {speciesOverlap} from './species-overlap.ts'

/**
 * Jaccard dissimilarity of two samples: the share of their species that only one of them has, 0 to 1. A
 * sample is one value per species, the species in the same order in both; above 0 is present.
 *
 * Formula: (b + c) / (a + b + c), a shared, b and c in one sample only.
 *
 * Source: Jaccard 1912, New Phytol. 11:37-50, as one minus his coefficient of community.
 *
 * Edge cases: two empty samples have no dissimilarity; an empty one against any other is at 1.
 *
 * @example jaccard([1, 1, 0, 0], [0, 1, 1, 1]) // => {value: 0.75}
 * @example jaccard([0], [0]) // => {notDefined: 'both samples are empty'}
 */
export function jaccard(first: readonly number[], second: readonly number[]): Quantity {
  const {shared, onlyFirst, onlySecond} = speciesOverlap(first, second)
  const alone = onlyFirst + onlySecond
  if (shared + alone === 0) return {notDefined: 'both samples are empty'}
  return {value: alone / (shared + alone)}
}
