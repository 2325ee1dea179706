import type {Interval} from '../model/quantity.ts'
import {normalQuantile} from './special-functions.ts'

const usual = 0.95

/**
 * Interval of a richness estimate that is at least the species seen: log-normal in the species not seen.
 *
 * Formula: [S + T/K, S + T K], T = estimate - S, K = exp(z sqrt(ln(1 + var/T^2))).
 *
 * Source: Chao 1987, Biometrics 43:783-791.
 *
 * Edge cases: T = 0 gives [S, S].
 *
 * @example logNormalAboveSeen(10, 10, 4).high // => 10
 * @example logNormalAboveSeen(26, 43.893, 204.66).low // => 30.511
 */
export function logNormalAboveSeen(
  seen: number,
  estimate: number,
  variance: number,
  confidence = usual
): Interval {
  const unseen = estimate - seen
  const spread =
    unseen > 0 ? Math.exp(quantile(confidence) * Math.sqrt(Math.log1p(variance / unseen ** 2))) : 1
  return {
    low: seen + unseen / spread,
    high: seen + unseen * spread,
    confidence,
    method: 'log-normal (Chao 1987)'
  }
}

/**
 * Interval of an expected number of species at a given size or coverage: log-normal around the estimate.
 *
 * Formula: [E/K, E K], K = exp(z sqrt(ln(1 + SE^2/E^2))), kept within the bounds.
 *
 * Source: the log-normal interval of Chao 1987, Biometrics 43:783-791, without its base of seen species, because a
 * rarefied number has none.
 *
 * Edge cases: a standard error of 0 gives [E, E].
 *
 * @example logNormalAround(20, 0, 1, 50).low // => 20
 */
export function logNormalAround(
  estimate: number,
  standardError: number,
  lowest: number,
  highest: number,
  basis: string,
  confidence = usual
): Interval {
  const spread = Math.exp(quantile(confidence) * Math.sqrt(Math.log1p((standardError / estimate) ** 2)))
  return {
    low: Math.max(lowest, estimate / spread),
    high: Math.min(highest, estimate * spread),
    confidence,
    method: `log-normal, ${basis}`
  }
}

/**
 * Interval of an estimate that is roughly normal.
 *
 * Formula: estimate +- z SE, kept within the bounds.
 *
 * Source: Chao et al. 2014, Ecol. Monogr. 84:45-67, appendix G, for diversity and coverage.
 *
 * Edge cases: a standard error of 0 gives the estimate itself.
 *
 * @example normalWithin(0.99, 0.02, 0, 1).high // => 1
 */
export function normalWithin(
  estimate: number,
  standardError: number,
  lowest: number,
  highest: number,
  basis: string,
  confidence = usual
): Interval {
  const z = quantile(confidence)
  return {
    low: Math.max(lowest, estimate - z * standardError),
    high: Math.min(highest, estimate + z * standardError),
    confidence,
    method: `estimate ± ${z.toFixed(2)} standard errors, ${basis}`
  }
}

/**
 * How many standard errors lie on each side at a level of confidence, 0 to 1: the exact normal quantile,
 * 1.959963984540054 at 0.95, which sources print as 1.96.
 */
function quantile(confidence: number): number {
  return normalQuantile((1 + confidence) / 2)
}
