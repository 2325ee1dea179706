import type {Quantity} from '../model/quantity.ts'
import {countLogLikelihood} from './count-log-likelihood.ts'
import {type CountModelFailure, isFitted} from './count-model.ts'
import {designMatrix} from './design-matrix.ts'
import {fitNegativeBinomial, negativeBinomialGlm} from './negative-binomial-glm.ts'
import {permutationTest} from './permutation-test.ts'
import {type PermutationOptions, type PermutationScheme, permutations} from './permutations.ts'

/** One entry per sampling unit in every list. */
export interface GroupedCounts {
  readonly counts: readonly number[]
  /** Net effort behind each count, above 0. */
  readonly efforts: readonly number[]
  readonly groups: readonly (string | number)[]
  /** Blocks of the design, where there are any. */
  readonly blocks?: readonly (string | number)[]
}

export interface LikelihoodRatioPermutation {
  /** Twice the gain in log-likelihood by the groups. */
  readonly statistic: Quantity
  /** Groups less one. */
  readonly degreesOfFreedom: number
  readonly p: Quantity
  readonly scheme: PermutationScheme
  readonly failed?: CountModelFailure['failed']
}

/** Fits settle to about 1e-9 of each count; likelihood ratios closer than this are the same. */
const tieTolerance = 1e-6

/**
 * Test of a difference in rate between groups: the likelihood-ratio statistic of a negative binomial model,
 * its p by permuting the groups over the units (within blocks), every unit keeping its count and effort. The
 * chi-square p of the statistic is too small at a handful of units.
 *
 * Formula: 2 (l1 - l0), l1 the largest log-likelihood of ln mu = ln effort + block + group, l0 that without
 * the group, theta by maximum likelihood in both. p by permutationTest.
 *
 * Source: Lawless 1987, Can. J. Stat. 15:209-225 (the statistic); Edgington & Onghena 2007, Randomization
 * Tests, 4th ed. (the permutation; from memory).
 *
 * Edge cases: no catch, factors that cannot be told apart, separation or no convergence of the model as
 * observed: not defined, with the model's message. An arrangement that leaves a group without catch counts
 * with the limit of its likelihood. One group: not defined. The result depends on the order of the units only
 * where permutations are drawn at random: sort them.
 *
 * @example likelihoodRatioPermutation({counts: [1, 2, 3, 40, 50, 60], efforts: [9, 9, 9, 9, 9, 9], groups: ['a', 'a', 'a', 'b', 'b', 'b']}, {limit: 999}).p // => {value: 0.1}
 * @example likelihoodRatioPermutation({counts: [0, 0, 4, 5], efforts: [9, 9, 9, 9], groups: ['a', 'a', 'b', 'b']}, {limit: 999}).failed // => 'separation'
 */
export function likelihoodRatioPermutation(
  data: GroupedCounts,
  {limit, random}: Omit<PermutationOptions, 'blocks'>
): LikelihoodRatioPermutation {
  const {counts, groups, blocks} = data
  const plan = permutations(groups, {...(blocks && {blocks}), limit, random})
  const {distinct, exhaustive, tried, smallestP} = plan
  const scheme: PermutationScheme = {distinct, exhaustive, tried, smallestP}
  const degreesOfFreedom = Math.max(0, plan.groups.length - 1)
  if (plan.groups.length < 2) {
    const one: Quantity = {notDefined: 'there are fewer than two groups'}
    return {statistic: one, degreesOfFreedom, p: one, scheme}
  }
  const offset = logEfforts(data)
  const model = negativeBinomialGlm({
    counts,
    design: groupDesign(plan.observed, plan.groups.length, blocks),
    offset
  })
  if (!isFitted(model)) {
    const none: Quantity = {notDefined: model.message}
    return {statistic: none, degreesOfFreedom, p: none, scheme, failed: model.failed}
  }
  // Blocks stay where they are, so that the model without groups is the same for every arrangement.
  const without = likelihoodOf(designMatrix(counts.length, blocks ? [blocks] : []).rows)
  const ratioOf = (arrangement: readonly number[]): number =>
    2 * (likelihoodOf(groupDesign(arrangement, plan.groups.length, blocks)) - without)
  const statistic: Quantity = {value: Math.max(0, ratioOf(plan.observed))}
  const test = permutationTest({permutations: plan, statistic: ratioOf, tolerance: tieTolerance})
  return {statistic, degreesOfFreedom, p: {value: test.p}, scheme}

  function likelihoodOf(design: readonly (readonly number[])[]): number {
    const {state, theta} = fitNegativeBinomial({counts, design, offset})
    return countLogLikelihood(counts, state.means, theta)
  }
}

/** Natural logarithms of the efforts: the offset of the model. */
export function logEfforts({efforts}: GroupedCounts): number[] {
  return efforts.map((effort) => {
    if (!(effort > 0)) throw new RangeError('every unit needs effort above 0')
    return Math.log(effort)
  })
}

/**
 * A column for each group, and for blocks the usual ones: the same model as with an intercept, and quicker to
 * fit.
 */
function groupDesign(
  groups: readonly number[],
  groupCount: number,
  blocks: readonly (string | number)[] | undefined
): readonly (readonly number[])[] {
  if (blocks) return designMatrix(groups.length, [groups, blocks]).rows
  return groups.map((own) => Array.from({length: groupCount}, (_, group) => (group === own ? 1 : 0)))
}
