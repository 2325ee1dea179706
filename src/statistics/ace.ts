import type {Quantity} from '../model/quantity.ts'
import {logNormalAboveSeen} from './confidence-interval.ts'
import {type AbundanceCounts, emptyReason} from './frequency-counts.ts'
import {infrequentEstimate, onlySingletons} from './infrequent-estimate.ts'

/**
 * ACE, the abundance-based coverage estimator of the number of species, with standard error and log-normal interval.
 *
 * Formula: S_abundant + S_rare/C + (f1/C) g, rare species having at most 10 individuals, n_rare together;
 * C = 1 - f1/n_rare; g = max(0, (S_rare/C) sum k (k-1) f_k / (n_rare (n_rare - 1)) - 1). Variance by the delta method.
 *
 * Source: Chao & Lee 1992, J. Am. Stat. Assoc. 87:210-217; Chao, Ma & Yang 1993, Biometrika 80:193-201 (the cut);
 * the interval as for Chao1, Chao 1987, Biometrics 43:783-791.
 *
 * Edge cases: not defined for an empty sample and where every rare individual is a singleton; without rare species
 * it is S.
 *
 * @example ace(frequencyCounts([20, 12, 4, 3, 2, 1, 1])).value // => 8.3827160
 * @example ace(frequencyCounts([20, 12])).value // => 2
 * @example ace(frequencyCounts([20, 1, 1])) // => {notDefined: 'every rare species was caught only once'}
 */
export function ace(sample: AbundanceCounts, cut = 10, confidence?: number): Quantity {
  if (sample.size === 0) return {notDefined: emptyReason(sample.kind)}
  if (onlySingletons(sample, cut)) return {notDefined: 'every rare species was caught only once'}
  const {value, variance} = infrequentEstimate(sample, cut)
  return {
    value,
    standardError: Math.sqrt(variance),
    interval: logNormalAboveSeen(sample.species, value, variance, confidence)
  }
}
