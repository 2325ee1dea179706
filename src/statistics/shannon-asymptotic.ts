import type {Quantity} from '../model/quantity.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'
import {logarithmicTail} from './logarithmic-tail.ts'
import {singletonProbability} from './singleton-probability.ts'
import {digamma} from './special-functions.ts'

/**
 * Shannon entropy of the assemblage, estimated with allowance for the species not seen, in nats.
 *
 * Formula: core(X, n) = sum over X < n of X/n (digamma(n) - digamma(X)) + f1/n sum over r >= n of (1-A)^(r-n+1) / r.
 * Individuals: H = core(X, n). Incidences: H = (T/U) core(Y, T) + ln(U/T). A as in coverage.
 *
 * Source: Chao, Wang & Jost 2013, Methods Ecol. Evol. 4:1091-1100; incidences Chao et al. 2014, Ecol. Monogr.
 * 84:45-67.
 *
 * Edge cases: an empty sample has none; one individual or one species gives 0. For incidences it is the entropy of
 * the incidence rates.
 *
 * @example shannonAsymptotic(frequencyCounts([7])) // => {value: 0}
 * @example shannonAsymptotic(frequencyCounts([3, 2, 2])) // => {value: 1.2357143}
 * @example shannonAsymptotic(frequencyCounts([])) // => {notDefined: 'no individuals were caught'}
 */
export function shannonAsymptotic(sample: FrequencyCounts): Quantity {
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  return {value: estimatedEntropy(sample)}
}

// A curve asks for the entropy of one sample at every size beyond it; a map would keep the thousands of a bootstrap.
let latest: {readonly sample: FrequencyCounts; readonly entropy: number} | undefined

/** The estimate for a sample that is not empty. */
export function estimatedEntropy(sample: FrequencyCounts): number {
  if (latest?.sample !== sample) latest = {sample, entropy: entropyOf(sample)}
  return latest.entropy
}

function entropyOf(sample: FrequencyCounts): number {
  const {classes, records, singletons, size} = sample
  const top = digamma(size)
  let core = (singletons / size) * logarithmicTail(singletonProbability(sample), size - 1)
  for (const {count, species} of classes) {
    if (count < size) core += species * (count / size) * (top - digammaOf(count))
  }
  return (size / records) * core + Math.log(records / size)
}

/** Counts whose digamma is kept: a bootstrap asks for those of the same counts thousands of times. */
const KEPT = 16_384
let kept: Float64Array | undefined

function digammaOf(count: number): number {
  if (count >= KEPT) return digamma(count)
  kept ??= new Float64Array(KEPT)
  // No whole number has a digamma of exactly 0, so 0 is a place not yet filled.
  const known = kept[count]!
  if (known !== 0) return known
  const value = digamma(count)
  kept[count] = value
  return value
}
