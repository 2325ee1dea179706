import type {Quantity} from '../model/quantity.ts'
import {speciesOverlap} from './species-overlap.ts'

/**
 * Sorensen dissimilarity of two samples, 0 (the same species) to 1 (none shared). A sample is one value per
 * species, the species in the same order in both; above 0 is present.
 *
 * Formula: (b + c) / (2 a + b + c), a shared, b and c in one sample only.
 *
 * Source: Sorensen 1948, K. Dan. Vidensk. Selsk. Biol. Skr. 5:1-34, as a dissimilarity in Baselga 2010, Glob.
 * Ecol. Biogeogr. 19:134-143.
 *
 * Edge cases: two empty samples have no dissimilarity; an empty one against any other is at 1.
 *
 * @example sorensen([1, 1, 0], [0, 1, 1]) // => {value: 0.5}
 * @example sorensen([9, 1, 0], [0, 4, 4]) // => {value: 0.5}
 * @example sorensen([0], [0]) // => {notDefined: 'both samples are empty'}
 */
export function sorensen(first: readonly number[], second: readonly number[]): Quantity {
  const {shared, onlyFirst, onlySecond} = speciesOverlap(first, second)
  const alone = onlyFirst + onlySecond
  if (shared + alone === 0) return {notDefined: 'both samples are empty'}
  return {value: alone / (2 * shared + alone)}
}
