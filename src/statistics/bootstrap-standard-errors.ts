/**
 * Standard errors of several statistics from their bootstrap replicates, one row a replicate and one column a
 * statistic, in the unit of each.
 *
 * Formula: standard deviation over the replicates, divisor one less than their number.
 *
 * Source: Efron 1979, Ann. Stat. 7:1-26; for the assemblage bootstrap Chao et al. 2014, Ecol. Monogr. 84:45-67,
 * appendix G.
 *
 * Edge cases: a replicate whose value is missing, infinite or not a number is left out of that statistic; a statistic
 * that loses more than 5 % of the replicates so, or keeps fewer than two, has no standard error (undefined), because
 * what is left would be a selection.
 *
 * @example bootstrapStandardErrors([[1, 5], [3, 5]], 2) // => [1.41421356, 0]
 * @example bootstrapStandardErrors([[1], [NaN], [3]], 1) // => [undefined]
 * @example bootstrapStandardErrors([], 1) // => [undefined]
 */
export function bootstrapStandardErrors(
  replicates: readonly ArrayLike<number>[],
  statistics: number
): (number | undefined)[] {
  return Array.from({length: statistics}, (_, i) => {
    const values = replicates.map((row) => row[i] ?? Number.NaN).filter(Number.isFinite)
    const n = values.length
    if (n < 2 || n < (1 - TOLERATED) * replicates.length) return undefined
    const mean = values.reduce((sum, value) => sum + value, 0) / n
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1))
  })
}

const TOLERATED = 0.05
