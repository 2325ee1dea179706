import {isDefined, type Quantity} from '../model/quantity.ts'
import {kruskalWallis} from './kruskal-wallis.ts'
import {permutationTest} from './permutation-test.ts'
import {type PermutationOptions, type PermutationScheme, permutations} from './permutations.ts'

export interface KruskalWallisPermutation {
  /** H, corrected for ties. */
  readonly statistic: Quantity
  readonly degreesOfFreedom: number
  readonly p: Quantity
  readonly scheme: PermutationScheme
}

/**
 * Kruskal-Wallis test with its p by permuting the groups over the values (within blocks): the fallback where
 * no model of counts can be fitted. Values are rates, so that unequal effort is not read as a difference.
 *
 * Formula: H of kruskalWallis; p by permutationTest.
 *
 * Source: Kruskal & Wallis 1952, J. Am. Stat. Assoc. 47:583-621, whose exact p is the one by permutation.
 *
 * Edge cases: all values tied, or fewer than two groups: not defined.
 *
 * @throws RangeError where values, groups and blocks differ in number.
 *
 * @example kruskalWallisPermutation([0, 0, 0, 4, 5, 6], ['a', 'a', 'a', 'b', 'b', 'b'], {limit: 99}).p // => {value: 0.1}
 * @example kruskalWallisPermutation([1, 1, 1, 1], ['a', 'a', 'b', 'b'], {limit: 99}).p // => {notDefined: 'all values are tied'}
 */
export function kruskalWallisPermutation(
  values: readonly number[],
  groups: readonly (string | number)[],
  {blocks, limit, random}: PermutationOptions
): KruskalWallisPermutation {
  const plan = permutations(groups, {...(blocks && {blocks}), limit, random})
  const {distinct, exhaustive, tried, smallestP} = plan
  const scheme = {distinct, exhaustive, tried, smallestP}
  const {statistic, degreesOfFreedom} = kruskalWallis(values, groups)
  if (!isDefined(statistic)) return {statistic, degreesOfFreedom, p: statistic, scheme}
  const heightOf = (arrangement: readonly number[]): number => {
    const permuted = kruskalWallis(values, arrangement).statistic
    return isDefined(permuted) ? permuted.value : 0
  }
  const {p} = permutationTest({permutations: plan, statistic: heightOf, tolerance: 1e-9})
  return {statistic, degreesOfFreedom, p: {value: p}, scheme}
}
