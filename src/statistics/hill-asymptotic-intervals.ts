import {bootstrapStandardErrors} from './bootstrap-standard-errors.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {type AsymptoticDiversity, estimatedSimpson, hillAsymptotic} from './hill-asymptotic.ts'
import {estimatedEntropy} from './shannon-asymptotic.ts'
import {withBootstrapInterval} from './with-bootstrap-interval.ts'

/**
 * Asymptotic diversity of orders 0, 1 and 2 with standard errors and intervals, in effective species.
 *
 * Formula: hillAsymptotic; order 0 has the standard error and log-normal interval of Chao1 (Chao2), orders 1 and 2
 * estimate +- 1.96 SE from bootstrap replicates, not below 1.
 *
 * Source: Chao et al. 2014, Ecol. Monogr. 84:45-67, appendix G; order 0 Chao 1987, Biometrics 43:783-791.
 *
 * Edge cases: those of hillAsymptotic; without replicates orders 1 and 2 have no interval. The replicates are those
 * of bootstrapReplicates with asymptoticStatistics.
 *
 * @example hillAsymptoticIntervals(frequencyCounts([6, 4, 2, 1, 1]), [[4, 3], [6, 5]]).q2.standardError // => 1.41421356
 */
export function hillAsymptoticIntervals(
  sample: FrequencyCounts,
  replicates: readonly ArrayLike<number>[],
  confidence?: number
): AsymptoticDiversity {
  const {q0, q1, q2} = hillAsymptotic(sample, confidence)
  const [ofShannon, ofSimpson] = bootstrapStandardErrors(replicates, 2)
  const shape = {shape: 'normal', lowest: 1, highest: Number.POSITIVE_INFINITY} as const
  return {
    q0,
    q1: withBootstrapInterval(q1, ofShannon, shape, confidence),
    q2: withBootstrapInterval(q2, ofSimpson, shape, confidence)
  }
}

/** What a replicate must yield: the estimates of orders 1 and 2. */
export function asymptoticStatistics(sample: FrequencyCounts): number[] {
  return [Math.exp(estimatedEntropy(sample)), estimatedSimpson(sample)]
}
