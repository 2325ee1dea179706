import type {PermutationScheme, Permutations} from './permutations.ts'

export interface PermutationTest extends PermutationScheme {
  readonly p: number
}

export interface PermutationTestOptions {
  readonly permutations: Permutations
  /** Statistic of an arrangement: group of every unit by index. Larger speaks against 'no difference'. */
  readonly statistic: (arrangement: readonly number[]) => number
  /**
   * How far below the observed statistic one still ties with it: sums in another order differ in their last
   * digits, and without it an arrangement equal to the observed one could count as smaller.
   */
  readonly tolerance: number
}

/**
 * p of a statistic by permutation.
 *
 * Formula: exhaustive: share of distinct arrangements with a statistic at least the observed one's (less the
 * tolerance). Drawn at random: (1 + number of those)/(1 + number drawn).
 *
 * Source: Phipson & Smyth 2010, Stat. Appl. Genet. Mol. Biol. 9:39.
 *
 * Edge cases: never 0: the observed arrangement is one of them. One distinct arrangement gives 1.
 *
 * @example permutationTest({permutations: {tried: 1, exhaustive: true, distinct: 1, smallestP: 1, observed: [0], arrangements: () => [[0]]}, statistic: () => 3, tolerance: 0}).p // => 1
 */
export function permutationTest({
  permutations,
  statistic,
  tolerance
}: PermutationTestOptions): PermutationTest {
  const {distinct, exhaustive, tried, smallestP} = permutations
  const threshold = statistic(permutations.observed) - tolerance
  let reached = 0
  for (const arrangement of permutations.arrangements()) if (statistic(arrangement) >= threshold) reached += 1
  const p = exhaustive ? reached / tried : (1 + reached) / (1 + tried)
  return {distinct, exhaustive, tried, smallestP, p}
}
