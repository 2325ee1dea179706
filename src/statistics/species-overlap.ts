/** Species of two samples: in both, in the first only, in the second only. */
export interface SpeciesOverlap {
  readonly shared: number
  readonly onlyFirst: number
  readonly onlySecond: number
}

/**
 * How many species two samples share and how many each has alone: a, b and c of the presence-absence
 * dissimilarities. A sample is one value per species, the species in the same order in both; above 0 is
 * present.
 *
 * Formula: a = species in both, b = species in the first only, c = species in the second only.
 *
 * Source: Legendre & Legendre 2012, Numerical Ecology, 3rd ed., section 7.3 (from memory).
 *
 * Edge cases: species in neither sample count nowhere; two empty samples give three zeros.
 *
 * @throws RangeError where the samples list different numbers of species.
 *
 * @example speciesOverlap([5, 1, 0, 0], [2, 0, 7, 0]) // => {shared: 1, onlyFirst: 1, onlySecond: 1}
 * @example speciesOverlap([0], [0]) // => {shared: 0, onlyFirst: 0, onlySecond: 0}
 */
export function speciesOverlap(first: readonly number[], second: readonly number[]): SpeciesOverlap {
  if (first.length !== second.length) throw new RangeError('the samples list different numbers of species')
  let shared = 0
  let onlyFirst = 0
  let onlySecond = 0
  for (const [species, here] of first.entries()) {
    const there = second[species]!
    if (here > 0 && there > 0) shared += 1
    else if (here > 0) onlyFirst += 1
    else if (there > 0) onlySecond += 1
  }
  return {shared, onlyFirst, onlySecond}
}
