import type {RandomStream} from './random-stream.ts'
import {logGamma} from './special-functions.ts'

/**
 * One draw from the binomial distribution, exact in distribution: successes in n trials of probability p.
 *
 * Below ten expected successes by inversion, counting up from 0; above by transformed rejection, whose cost does not
 * grow with n (algorithm BTRS of Hormann 1993, J. Stat. Comput. Simul. 46:101-110).
 */
export function binomialDraw(stream: RandomStream, trials: number, probability: number): number {
  if (trials <= 0 || probability <= 0) return 0
  if (probability >= 1) return trials
  if (probability > 0.5) return trials - binomialDraw(stream, trials, 1 - probability)
  return trials * probability < 10
    ? byInversion(stream, trials, probability)
    : byRejection(stream, trials, probability)
}

function byInversion(stream: RandomStream, n: number, p: number): number {
  const odds = p / (1 - p)
  let chance = Math.exp(n * Math.log1p(-p))
  let left = stream.uniform()
  let k = 0
  while (left >= chance && k < n) {
    left -= chance
    k++
    chance *= (odds * (n - k + 1)) / k
  }
  return k
}

function byRejection(stream: RandomStream, n: number, p: number): number {
  const deviation = Math.sqrt(n * p * (1 - p))
  const b = 1.15 + 2.53 * deviation
  const a = -0.0873 + 0.0248 * b + 0.01 * p
  const centre = n * p + 0.5
  const alpha = (2.83 + 5.1 / b) * deviation
  const squeeze = 0.92 - 4.2 / b
  const mode = Math.floor((n + 1) * p)
  const logOdds = Math.log(p / (1 - p))
  const height = logGamma(mode + 1) + logGamma(n - mode + 1)
  for (;;) {
    const u = stream.uniform() - 0.5
    const v = stream.uniform()
    const room = 0.5 - Math.abs(u)
    const k = Math.floor(((2 * a) / room + b) * u + centre)
    if (room >= 0.07 && v <= squeeze) return k
    if (k < 0 || k > n) continue
    const density = height - logGamma(k + 1) - logGamma(n - k + 1) + (k - mode) * logOdds
    if (Math.log((v * alpha) / (a / room ** 2 + b)) <= density) return k
  }
}
