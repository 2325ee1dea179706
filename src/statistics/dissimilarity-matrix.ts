import {isDefined, type Quantity} from '../model/quantity.ts'

/**
 * Dissimilarities between all samples, square, symmetric, zeros on the diagonal; or the pair that has none.
 */
export type DissimilarityMatrix =
  | {readonly matrix: readonly (readonly number[])[]}
  | {readonly notDefined: string; readonly pair: readonly [number, number]}

/**
 * Dissimilarities of every pair of samples, for tests and ordinations that need all of them.
 *
 * Formula: d_ij = measure(sample i, sample j), d_ii = 0.
 *
 * Source: Legendre & Legendre 2012, Numerical Ecology, 3rd ed., section 2.2 (from memory).
 *
 * Edge cases: one pair without a dissimilarity (two empty samples under most measures) leaves no matrix: the
 * first such pair is named, so that the empty samples can be left out and said. No samples give an empty
 * matrix.
 *
 * @example dissimilarityMatrix([[0], [3], [5]], (a, b) => ({value: Math.abs(a[0] - b[0])})).matrix // => [[0, 3, 5], [3, 0, 2], [5, 2, 0]]
 * @example dissimilarityMatrix([[0], [0]], () => ({notDefined: 'both samples are empty'})) // => {notDefined: 'both samples are empty', pair: [0, 1]}
 */
export function dissimilarityMatrix<Sample>(
  samples: readonly Sample[],
  measure: (first: Sample, second: Sample) => Quantity
): DissimilarityMatrix {
  const matrix = samples.map(() => samples.map(() => 0))
  for (const [row, first] of samples.entries()) {
    for (let column = row + 1; column < samples.length; column += 1) {
      const dissimilarity = measure(first, samples[column]!)
      if (!isDefined(dissimilarity)) return {notDefined: dissimilarity.notDefined, pair: [row, column]}
      matrix[row]![column] = dissimilarity.value
      matrix[column]![row] = dissimilarity.value
    }
  }
  return {matrix}
}
