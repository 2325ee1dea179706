import type {Quantity} from '../model/quantity.ts'
import {bootstrapStandardErrors} from './bootstrap-standard-errors.ts'
import {coverageAtSize, expectedCoverage} from './coverage-at-size.ts'
import {expectedDiversity} from './expected-diversity.ts'
import {expectedInSubsamples} from './expected-in-subsamples.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {rarefactionAndExtrapolation} from './rarefaction-and-extrapolation.ts'
import {type IntervalShape, withBootstrapInterval} from './with-bootstrap-interval.ts'

/** Expected diversity and coverage of a sample of one size. */
export interface CurvePoint {
  /** Individuals, or sampling units. */
  readonly size: number
  readonly coverage: Quantity
  readonly q0: Quantity
  readonly q1: Quantity
  readonly q2: Quantity
}

/**
 * Rarefaction and extrapolation curve of orders 0, 1 and 2 (effective species) and coverage (0 to 1), with intervals
 * from bootstrap replicates. Drawn over size it is the size-based curve, over coverage the coverage-based one.
 *
 * Formula: rarefactionAndExtrapolation and coverageAtSize at each size; intervals as in withBootstrapInterval.
 *
 * Source: Chao et al. 2014, Ecol. Monogr. 84:45-67.
 *
 * Edge cases: those of its two parts; without replicates there are no intervals. The replicates are those of
 * bootstrapReplicates with curveStatistics of the same sizes.
 *
 * @example diversityCurve(frequencyCounts([3, 2, 1]), [6])[0].q0 // => {value: 3}
 * @example diversityCurve(frequencyCounts([1, 1]), [1])[0].coverage // => {notDefined: 'every species was caught only once'}
 */
export function diversityCurve(
  sample: FrequencyCounts,
  sizes: readonly number[],
  replicates: readonly ArrayLike<number>[] = [],
  confidence?: number
): CurvePoint[] {
  const errors = bootstrapStandardErrors(replicates, 4 * sizes.length)
  return sizes.map((size, i) => {
    const diversity = (order: 0 | 1 | 2) =>
      withBootstrapInterval(
        rarefactionAndExtrapolation(sample, order, size),
        errors[4 * i + 1 + order],
        diversityShape(sample, order, size),
        confidence
      )
    return {
      size,
      coverage: withBootstrapInterval(
        coverageAtSize(sample, size),
        errors[4 * i],
        COVERAGE_SHAPE,
        confidence
      ),
      q0: diversity(0),
      q1: diversity(1),
      q2: diversity(2)
    }
  })
}

/** What a replicate must yield for the curve: coverage and the three diversities, size after size. */
export function curveStatistics(sizes: readonly number[]): (sample: FrequencyCounts) => Float64Array {
  const inSubsamples = expectedInSubsamples(sizes)
  return (sample) => {
    const below = inSubsamples(sample)
    const row = new Float64Array(4 * sizes.length)
    for (const [i, size] of sizes.entries()) {
      const isBelow = !Number.isNaN(below[3 * i])
      row[4 * i] = isBelow ? below[3 * i]! : expectedCoverage(sample, size)
      row[4 * i + 1] = isBelow ? below[3 * i + 1]! : expectedDiversity(sample, 0, size)
      row[4 * i + 2] = isBelow ? Math.exp(below[3 * i + 2]!) : expectedDiversity(sample, 1, size)
      row[4 * i + 3] = expectedDiversity(sample, 2, size)
    }
    return row
  }
}

/** Individuals hold one species at least and as many as they are at most; units may hold none and many. */
export function diversityShape({kind}: FrequencyCounts, order: 0 | 1 | 2, size: number): IntervalShape {
  const shape = order === 0 ? 'log-normal' : 'normal'
  return kind === 'abundance'
    ? {shape, lowest: 1, highest: Math.max(1, size)}
    : {shape, lowest: 0, highest: Number.POSITIVE_INFINITY}
}

const COVERAGE_SHAPE: IntervalShape = {shape: 'normal', lowest: 0, highest: 1}
