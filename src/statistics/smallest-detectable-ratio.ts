import type {Quantity} from '../model/quantity.ts'
import {countQuantile} from './count-quantile.ts'
import {permutations} from './permutations.ts'
import type {ReplicatedStream} from './random-stream.ts'

/** A layout of sampling units and what a season has shown of them. */
export interface DetectionLayout {
  /** Effort of each unit, above 0. */
  readonly efforts: readonly number[]
  readonly groups: readonly (string | number)[]
  /** The group whose rate is raised; the others keep `rate`. */
  readonly raised: string | number
  /** Rate per unit of effort, from the fitted model. */
  readonly rate: number
  /** Aggregation from the fitted model; Infinity for Poisson. */
  readonly theta: number
}

export interface DetectionOptions {
  readonly random: ReplicatedStream
  /** Largest p that is to be called a difference. */
  readonly level?: number
  /** Share of seasons in which the difference is to be found. */
  readonly power?: number
  readonly simulations?: number
}

/** Ratios above this are not looked for. */
const largestRatio = 100

/** Layouts with no more arrangements than this are tried in full, others by `fewDraws` at random. */
const fewArrangements = 500

/** Enough to tell p up to 0.05 from larger ones; the test itself draws more. */
const fewDraws = 199

const detectionCaution =
  'estimate: rate and clumping are taken to stay as they were, and units to stay independent'

/**
 * The smallest ratio of rates that a layout would show: p of the permutation test of a difference between
 * groups not above `level`, in a share `power` of simulated seasons. Blocks are not taken into account.
 *
 * Formula: counts of a season from the negative binomial model with the rate of one group multiplied by r; p
 * by permuting the groups over the units, its statistic the negative binomial log-likelihood at the rates of
 * the groups (total count over total effort) and the given theta; r by bisection to 1 %. The same random
 * numbers serve every r, so that a larger r never means fewer animals.
 *
 * Source: power by simulation, Bolker 2008, Ecological Models and Data in R, chapter 5 (from memory).
 *
 * Edge cases: a permutation test that cannot reach `level` in this layout shows nothing however large the
 * ratio: not defined. Nor is it with fewer than two groups, no catch expected, or where a ratio of 100 would
 * not do.
 *
 * @throws RangeError where an effort is not above 0 or lists differ in length.
 *
 * @example smallestDetectableRatio({efforts: [9, 9, 9, 9, 9, 9], groups: ['a', 'a', 'a', 'b', 'b', 'b'], raised: 'b', rate: 1, theta: 2}, {}) // => {notDefined: 'the smallest p that this layout allows is above the level'}
 */
export function smallestDetectableRatio(
  layout: DetectionLayout,
  {random, level = 0.05, power = 0.8, simulations = 500}: DetectionOptions
): Quantity {
  const {efforts, groups, raised, rate, theta} = layout
  if (efforts.length !== groups.length || !efforts.every((effort) => effort > 0)) {
    throw new RangeError('every unit needs its group and effort above 0')
  }
  if (!groups.includes(raised) || groups.every((group) => group === raised)) {
    return {notDefined: 'there are fewer than two groups'}
  }
  if (!(rate > 0)) return {notDefined: 'no catch is expected'}
  const isSmall = permutationP(layout, random, level)
  if (isSmall === undefined) return {notDefined: 'the smallest p that this layout allows is above the level'}
  // Replicate 0 begins where the stream itself does, and the permutations have drawn from there.
  const seasons = [...random.replicates(1, simulations + 1)].map((stream) => {
    const draws = efforts.map(() => stream.uniform())
    // Units of the other groups catch the same at every ratio.
    return {draws, baseline: draws.map((draw, unit) => countQuantile(draw, rate * efforts[unit]!, theta))}
  })
  const isShown = (ratio: number): boolean => {
    const found = seasons.filter(({draws, baseline}) =>
      isSmall(
        baseline.map((count, unit) =>
          groups[unit] === raised ? countQuantile(draws[unit]!, ratio * rate * efforts[unit]!, theta) : count
        )
      )
    )
    return found.length >= power * simulations
  }
  let tooSmall = 1
  let enough = 2
  while (!isShown(enough)) {
    if (enough >= largestRatio) return {notDefined: 'even 100 times the rate would not show'}
    tooSmall = enough
    enough = Math.min(largestRatio, enough * 2)
  }
  while (enough / tooSmall > 1.01) {
    const middle = Math.sqrt(tooSmall * enough)
    if (isShown(middle)) enough = middle
    else tooSmall = middle
  }
  return {value: enough, caution: detectionCaution}
}

/**
 * Whether p of the counts of a season is not above the level; undefined where no counts could bring it there.
 */
function permutationP(
  {efforts, groups, theta}: DetectionLayout,
  random: ReplicatedStream,
  level: number
): ((counts: readonly number[]) => boolean) | undefined {
  const every = permutations(groups, {limit: fewArrangements, random})
  const plan = every.exhaustive ? every : permutations(groups, {limit: fewDraws, random})
  const arrangements = [...plan.arrangements()]
  // The observed arrangement is one of all of them, and comes on top of those drawn.
  const mayReach =
    Math.floor(level * (plan.exhaustive ? plan.tried : plan.tried + 1) + 1e-9) - (plan.exhaustive ? 0 : 1)
  if (mayReach < (plan.exhaustive ? 1 : 0)) return undefined
  return (counts) => {
    const observed = profileLikelihood(counts, efforts, plan.observed, plan.groups.length, theta)
    let reached = 0
    for (const arrangement of arrangements) {
      const permuted = profileLikelihood(counts, efforts, arrangement, plan.groups.length, theta)
      if (permuted >= observed - 1e-9 && ++reached > mayReach) return false
    }
    return true
  }
}

/** Log-likelihood at the rates of the groups, without what does not depend on them. */
function profileLikelihood(
  counts: readonly number[],
  efforts: readonly number[],
  arrangement: readonly number[],
  groupCount: number,
  theta: number
): number {
  const caught = Array.from({length: groupCount}, () => 0)
  const effort = Array.from({length: groupCount}, () => 0)
  for (const [unit, group] of arrangement.entries()) {
    caught[group]! += counts[unit]!
    effort[group]! += efforts[unit]!
  }
  let sum = 0
  for (const [unit, group] of arrangement.entries()) {
    const mean = (caught[group]! / effort[group]!) * efforts[unit]!
    if (mean === 0) continue
    sum += counts[unit]! * Math.log(mean)
    sum -= theta === Number.POSITIVE_INFINITY ? mean : (counts[unit]! + theta) * Math.log1p(mean / theta)
  }
  return sum
}
