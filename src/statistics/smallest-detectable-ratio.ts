import type {Quantity} from '../model/quantity.ts'
import {countQuantile} from './count-quantile.ts'
import {type ExpectedUnits, logRatePermutation} from './log-rate-permutation.ts'
import type {ReplicatedStream} from './random-stream.ts'

/** A layout of sampling units and what a season has shown of them. */
export interface DetectionLayout extends ExpectedUnits {
  /** The group whose rate is raised; the others keep theirs. */
  readonly raised: string | number
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

/** How near to each other a ratio that is shown and one that is not have to come. */
const nearness = 1.02

const detectionCaution =
  'estimate: rate and clumping are taken to stay as they were, and units to stay independent'

/**
 * The smallest ratio of rates that a layout would show: p of a permutation test of a difference between groups not
 * above `level`, in a share `power` of simulated seasons.
 *
 * Formula: counts of a season from the negative binomial model with the expected counts of one group multiplied by
 * r; p by logRatePermutation; r by bisection to 2 %. The same random numbers serve every r, so that a larger r never
 * means fewer animals.
 *
 * Source: power by simulation, Bolker 2008, Ecological Models and Data in R, chapter 5 (from memory).
 *
 * Edge cases: a permutation test that cannot reach `level` in this layout shows nothing however large the
 * ratio: not defined. Nor is it with fewer than two groups, no catch expected, or where a ratio of 100 would
 * not do.
 *
 * @throws RangeError where an expected count is negative or lists differ in length.
 *
 * @example smallestDetectableRatio({expected: [9, 9, 9, 9, 9, 9], groups: ['a', 'a', 'a', 'b', 'b', 'b'], raised: 'b', theta: 2}, {}) // => {notDefined: 'the smallest p that this layout allows is above the level'}
 */
export function smallestDetectableRatio(
  layout: DetectionLayout,
  {random, level = 0.05, power = 0.8, simulations = 200}: DetectionOptions
): Quantity {
  const {expected, groups, raised, theta} = layout
  if (expected.length !== groups.length || !expected.every((count) => count >= 0)) {
    throw new RangeError('every unit needs its group and an expected count')
  }
  if (!groups.includes(raised) || groups.every((group) => group === raised)) {
    return {notDefined: 'there are fewer than two groups'}
  }
  if (!expected.some((count) => count > 0)) return {notDefined: 'no catch is expected'}
  const isSmall = logRatePermutation(layout, {level, random})
  if (isSmall === undefined) return {notDefined: 'the smallest p that this layout allows is above the level'}
  // Replicate 0 begins where the stream itself does, and the permutations have drawn from there.
  const seasons = [...random.replicates(1, simulations + 1)].map((stream) => {
    const draws = expected.map(() => stream.uniform())
    // Units of the other groups catch the same at every ratio.
    return {draws, counts: draws.map((draw, unit) => countQuantile(draw, expected[unit]!, theta))}
  })
  const raisedUnits = groups.flatMap((group, unit) => (group === raised ? [unit] : []))
  const enoughFound = Math.ceil(power * simulations - 1e-9)
  const isShown = (ratio: number): boolean => {
    let found = 0
    for (const [season, {draws, counts}] of seasons.entries()) {
      for (const unit of raisedUnits) {
        counts[unit] = countQuantile(draws[unit]!, ratio * expected[unit]!, theta)
      }
      if (isSmall(counts)) found += 1
      if (found >= enoughFound) return true
      if (found + (simulations - season - 1) < enoughFound) return false
    }
    return false
  }
  let tooSmall = 1
  let enough = 2
  while (!isShown(enough)) {
    if (enough >= largestRatio) return {notDefined: 'even 100 times the rate would not show'}
    tooSmall = enough
    enough = Math.min(largestRatio, enough * 2)
  }
  while (enough / tooSmall > nearness) {
    const middle = Math.sqrt(tooSmall * enough)
    if (isShown(middle)) enough = middle
    else tooSmall = middle
  }
  return {value: enough, caution: detectionCaution}
}
