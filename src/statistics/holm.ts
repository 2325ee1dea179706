/**
 * Holm's adjustment of p-values for several tests of one family; returned in the order given.
 *
 * Formula: sort ascending; the i-th smallest of m becomes the largest of (m - k + 1) p_k over k <= i, at most
 * 1.
 *
 * Source: Holm 1979, Scand. J. Stat. 6:65-70.
 *
 * Edge cases: none gives none; one p is left as it is; equal p stay equal.
 *
 * @example holm([0.01, 0.04, 0.03]) // => [0.03, 0.06, 0.06]
 * @example holm([0.5, 0.9]) // => [1, 1]
 * @example holm([]) // => []
 */
export function holm(pValues: readonly number[]): number[] {
  const ascending = pValues.map((p, index) => ({p, index})).sort((a, b) => a.p - b.p)
  const adjusted = pValues.map(() => 0)
  let largest = 0
  for (const [rank, {p, index}] of ascending.entries()) {
    largest = Math.max(largest, Math.min(1, (pValues.length - rank) * p))
    adjusted[index] = largest
  }
  return adjusted
}
