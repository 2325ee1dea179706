import {isDefined, type Quantity} from '../model/quantity.ts'
import {bootstrapStandardErrors} from './bootstrap-standard-errors.ts'
import {diversityShape} from './diversity-curve.ts'
import {expectedDiversity} from './expected-diversity.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {rarefactionAndExtrapolation} from './rarefaction-and-extrapolation.ts'
import {expectedSize, sizeForCoverage} from './size-for-coverage.ts'
import {withBootstrapInterval} from './with-bootstrap-interval.ts'

/** Diversity of orders 0, 1 and 2 at one coverage. */
export interface DiversityAtCoverage {
  /** Individuals, or sampling units, that the coverage takes; a real number. */
  readonly size: Quantity
  readonly q0: Quantity
  readonly q1: Quantity
  readonly q2: Quantity
}

/**
 * Hill numbers of orders 0, 1 and 2, in effective species, that are expected at a given coverage, with intervals from
 * bootstrap replicates at that same coverage.
 *
 * Formula: rarefactionAndExtrapolation at sizeForCoverage, the size not rounded.
 *
 * Source: Chao & Jost 2012, Ecology 93:2533-2547; Chao et al. 2014, Ecol. Monogr. 84:45-67.
 *
 * Edge cases: those of its two parts: not defined where coverage is not, and at order 0 where the coverage takes more
 * than twice the reference size. A coverage that one individual exceeds counts as that of one. The replicates are
 * those of bootstrapReplicates with coverageStatistics of the same coverage.
 *
 * @example diversityAtCoverage(frequencyCounts([4, 2, 1, 1]), 0.78125).q0 // => {value: 4}
 * @example diversityAtCoverage(frequencyCounts([4, 2, 1, 1]), 0.78125).size // => {value: 8}
 * @example diversityAtCoverage(frequencyCounts([1, 1]), 0.5).q1 // => {notDefined: 'every species was caught only once'}
 */
export function diversityAtCoverage(
  sample: FrequencyCounts,
  target: number,
  replicates: readonly ArrayLike<number>[] = [],
  confidence?: number
): DiversityAtCoverage {
  const size = sizeForCoverage(sample, target)
  if (!isDefined(size)) return {size, q0: size, q1: size, q2: size}
  const errors = bootstrapStandardErrors(replicates, 3)
  const diversity = (order: 0 | 1 | 2) =>
    withBootstrapInterval(
      rarefactionAndExtrapolation(sample, order, size.value),
      errors[order],
      diversityShape(sample, order, size.value),
      confidence
    )
  return {size, q0: diversity(0), q1: diversity(1), q2: diversity(2)}
}

/** What a replicate must yield: the three diversities at the coverage, however far it has to be extrapolated. */
export function coverageStatistics(target: number): (sample: FrequencyCounts) => number[] {
  return (sample) => {
    const size = expectedSize(sample, target)
    return [
      expectedDiversity(sample, 0, size),
      expectedDiversity(sample, 1, size),
      expectedDiversity(sample, 2, size)
    ]
  }
}
