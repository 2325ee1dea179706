import type {Quantity} from '../model/quantity.ts'

/**
 * Bray-Curtis dissimilarity of two samples, 0 (alike) to 1 (nothing shared). A sample is one value per
 * species, the species in the same order in both; values are counts or rates, 0 or more. Counts from unequal
 * effort measure the effort too: give rates.
 *
 * Formula: sum |x - y| / sum (x + y).
 *
 * Source: Bray & Curtis 1957, Ecol. Monogr. 27:325-349.
 *
 * Edge cases: two empty samples have no dissimilarity; an empty one against any other is at 1.
 *
 * @throws RangeError where the samples list different numbers of species.
 *
 * @example brayCurtis([6, 7, 4], [6, 7, 4]) // => {value: 0}
 * @example brayCurtis([1, 1, 0], [0, 1, 1]) // => {value: 0.5}
 * @example brayCurtis([3, 0], [0, 0]) // => {value: 1}
 * @example brayCurtis([0, 0], [0, 0]) // => {notDefined: 'both samples are empty'}
 */
export function brayCurtis(first: readonly number[], second: readonly number[]): Quantity {
  if (first.length !== second.length) throw new RangeError('the samples list different numbers of species')
  let difference = 0
  let total = 0
  for (const [species, here] of first.entries()) {
    const there = second[species]!
    difference += Math.abs(here - there)
    total += here + there
  }
  return total === 0 ? {notDefined: 'both samples are empty'} : {value: difference / total}
}
