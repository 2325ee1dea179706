import type {Quantity} from '../model/quantity.ts'
import {coverageNotDefined, estimatedCoverage} from './coverage.ts'
import {expectedCoverage} from './coverage-at-size.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {singletonProbability} from './singleton-probability.ts'

/**
 * Size of the sample, in individuals or sampling units, whose expected coverage is the target. It is a real number,
 * not rounded.
 *
 * Formula: up to C(n) the point where coverageAtSize, linear between whole sizes, meets the target; above it
 * n + [ln(n/f1) + ln(1-C)] / ln(1-A) - 1, with U for n/f1 = U/Q1 for incidences.
 *
 * Source: Chao & Jost 2012, Ecology 93:2533-2547; Chao et al. 2014, Ecol. Monogr. 84:45-67.
 *
 * Edge cases: not defined where coverage is not; a target between the coverage at n - 1 and at n lies between those
 * sizes; where coverage stands still, as from n - 2 to n - 1 without doubletons, the smallest size that reaches the
 * target; a coverage of 1 is reached by no finite sample, unless the sample has no singletons, or one and no
 * doubletons, and then by its own size. A target that is not above 0 and at most 1 is our own bug: RangeError.
 *
 * @example sizeForCoverage(frequencyCounts([4, 2, 1, 1]), 0.75) // => {value: 7}
 * @example sizeForCoverage(frequencyCounts([4, 2, 1, 1]), 0.80859375) // => {value: 9}
 * @example sizeForCoverage(frequencyCounts([4, 2, 1, 1]), 1) // => {notDefined: 'no finite sample is complete'}
 */
export function sizeForCoverage(sample: FrequencyCounts, target: number): Quantity {
  if (!(target > 0 && target <= 1)) throw new RangeError(`${target} is not a coverage to aim at`)
  const reason = coverageNotDefined(sample)
  if (reason !== undefined) return {notDefined: reason}
  const size = expectedSize(sample, target)
  return Number.isFinite(size) ? {value: size} : {notDefined: 'no finite sample is complete'}
}

/** The formulas, for every sample that is not empty; infinite where no size reaches the target. */
export function expectedSize(sample: FrequencyCounts, target: number): number {
  const reached = estimatedCoverage(sample)
  if (target === reached) return sample.size
  if (target > reached) {
    const {records, singletons, size} = sample
    const lower = Math.log1p(-singletonProbability(sample))
    return size + (Math.log(records / singletons) + Math.log1p(-target)) / lower - 1
  }
  let below = 0
  let low = 0
  let above = sample.size
  let high = reached
  for (let step = 1; above - below > 1; step++) {
    // 1 / (1 - C) grows about evenly with size, so that a few guesses do; every third step halves whatever happens.
    const along = step % 3 === 0 ? 0.5 : (1 / (1 - target) - 1 / (1 - low)) / (1 / (1 - high) - 1 / (1 - low))
    const guess = Math.floor(below + (above - below) * (along > 0 ? along : 0.5))
    const middle = Math.min(above - 1, Math.max(below + 1, guess))
    const there = expectedCoverage(sample, middle)
    if (there < target) [below, low] = [middle, there]
    else [above, high] = [middle, there]
  }
  return below + (target - low) / (high - low)
}
