import {countLogLikelihood} from './count-log-likelihood.ts'
import {type CountModel, countModel, failure} from './count-model.ts'
import {
  type CountData,
  iteratedWeightedRegression,
  type RegressionState
} from './iterated-weighted-regression.ts'
import {poissonGlm, reasonAgainstFitting, startingMeans} from './poisson-glm.ts'
import {digamma, trigamma} from './special-functions.ts'

const roundLimit = 200

/** Counts above this are given to the gamma functions, whose cost does not grow with them. */
const longCount = 1000

/**
 * A Newton step in ln theta below this is the last of its round: the means move next, and theta again with
 * them.
 */
const roughStep = 0.1

/** Above this multiple of the largest expected count, theta changes no variance by more than a millionth. */
const practicallyInfinite = 1e6

/**
 * Generalised linear model of counts: negative binomial distribution (NB2: variance mu + mu^2/theta), log
 * link, offset, theta by maximum likelihood.
 *
 * Formula: in turn the coefficients given theta (iteratedWeightedRegression) and theta given the expected
 * counts, by Newton steps in ln theta on sum[psi(y + theta) - psi(theta) + ln theta + 1 - ln(theta + mu) - (y
 * + theta)/(mu + theta)] = 0, until theta stands. Standard errors are those given theta; that of theta is
 * 1/sqrt(information).
 *
 * Source: Lawless 1987, Can. J. Stat. 15:209-225; Venables & Ripley 2002, Modern Applied Statistics with S,
 * 4th ed., section 7.4 (from memory).
 *
 * Edge cases: counts that spread no more than Poisson send theta to infinity, where no finite theta is more likely
 * than the Poisson model: the result is then that model and says so in `family`. It is decided for every fit by
 * itself, so that a model without groups may be negative binomial beside a Poisson one with them. Failures as for poissonGlm. With theta at its maximum the deviance is near
 * the residual degrees of freedom whatever the fit: it is no test of fit.
 *
 * @example negativeBinomialGlm({counts: [0, 1, 5, 14], design: [[1], [1], [1], [1]]}).coefficients[0].toFixed(6) // => '1.609438'
 * @example negativeBinomialGlm({counts: [5, 5, 5, 5], design: [[1], [1], [1], [1]]}).family // => 'Poisson'
 * @example negativeBinomialGlm({counts: [0, 0, 3, 40], design: [[1, 0], [1, 0], [1, 1], [1, 1]]}).failed // => 'separation'
 */
export function negativeBinomialGlm(data: CountData): CountModel {
  const unusable = reasonAgainstFitting(data)
  if (unusable) return failure(unusable)
  const {state, theta, information} = fitNegativeBinomial(data)
  if (theta === Number.POSITIVE_INFINITY) return poissonGlm(data)
  return countModel(data, state, theta, 1 / Math.sqrt(information))
}

interface NegativeBinomialState {
  readonly state: RegressionState
  /** Infinity where the Poisson model is at least as likely. */
  readonly theta: number
  readonly information: number
}

/** The fit alone, for data known to be fit to fit: what a permutation test calls thousands of times. */
export function fitNegativeBinomial(data: CountData): NegativeBinomialState {
  const {counts} = data
  const poisson = iteratedWeightedRegression(data, Number.POSITIVE_INFINITY, startingMeans(data))
  const exceeding = exceedances(counts)
  let state = poisson
  let theta = momentTheta(counts, poisson.means)
  for (let round = 1; round <= roundLimit; round += 1) {
    const next = likelyTheta(counts, state.means, theta, exceeding)
    if (next === Number.POSITIVE_INFINITY) return {state: poisson, theta: next, information: 0}
    const settled = Math.abs(next - theta) <= 1e-8 * theta
    theta = next
    state = iteratedWeightedRegression(data, theta, state.means)
    const slower = round === roundLimit || !state.converged
    if (settled || slower) {
      if (slower) state = {...state, converged: false}
      break
    }
  }
  const gain =
    countLogLikelihood(counts, state.means, theta) -
    countLogLikelihood(counts, poisson.means, Number.POSITIVE_INFINITY)
  if (gain <= 0) return {state: poisson, theta: Number.POSITIVE_INFINITY, information: 0}
  return {state, theta, information: -thetaSlopes(counts, state.means, theta, exceeding).second}
}

/** A start of the right size: theta for which the squared residuals relative to the means are as expected. */
function momentTheta(counts: readonly number[], means: readonly number[]): number {
  let squares = 0
  for (const [unit, count] of counts.entries()) squares += (count / means[unit]! - 1) ** 2
  return Math.min(1e4, Math.max(1e-3, counts.length / squares))
}

/**
 * Theta near the largest likelihood given expected counts; Infinity where the likelihood rises without end.
 */
function likelyTheta(
  counts: readonly number[],
  means: readonly number[],
  start: number,
  exceeding: readonly number[] | undefined
): number {
  const ceiling = practicallyInfinite * Math.max(1, ...means)
  let logTheta = Math.log(start)
  for (let iteration = 0; iteration < 100; iteration += 1) {
    const theta = Math.exp(logTheta)
    const {first, second} = thetaSlopes(counts, means, theta, exceeding)
    // Slopes in ln theta, where steps cannot leave the positive numbers.
    const slope = theta * first
    const bend = slope + theta ** 2 * second
    const step = bend < 0 ? -slope / bend : 2 * Math.sign(slope)
    logTheta += Math.min(2, Math.max(-2, step))
    if (logTheta > Math.log(ceiling)) return Number.POSITIVE_INFINITY
    if (Math.abs(step) < roughStep) break
  }
  return Math.exp(logTheta)
}

/**
 * First and second derivative of the log-likelihood by theta, expected counts fixed. As long as counts are
 * not long the differences psi(y + theta) - psi(theta) are sums over j < y of 1/(theta + j), taken for all
 * units at once.
 */
function thetaSlopes(
  counts: readonly number[],
  means: readonly number[],
  theta: number,
  exceeding: readonly number[] | undefined
): {readonly first: number; readonly second: number} {
  let first = 0
  let second = 0
  for (let j = 0; exceeding !== undefined && j < exceeding.length; j += 1) {
    const reciprocal = 1 / (theta + j)
    const term = exceeding[j]! * reciprocal
    first += term
    second -= term * reciprocal
  }
  if (exceeding === undefined) {
    const digammaHere = digamma(theta)
    const trigammaHere = trigamma(theta)
    for (const count of counts) {
      first += digamma(count + theta) - digammaHere
      second += trigamma(count + theta) - trigammaHere
    }
  }
  for (let unit = 0; unit < counts.length; unit += 1) {
    const count = counts[unit]!
    const mean = means[unit]!
    const spread = mean + theta
    first += (mean - count) / spread - Math.log1p(mean / theta)
    second += 1 / theta - 2 / spread + (count + theta) / spread ** 2
  }
  return {first, second}
}

/** For each j from 0 how many counts exceed it; undefined where the list would be longer than its use. */
function exceedances(counts: readonly number[]): readonly number[] | undefined {
  const largest = Math.max(...counts)
  if (largest > longCount) return undefined
  const exceeding = Array.from({length: largest}, () => 0)
  for (const count of counts) for (let j = 0; j < count; j += 1) exceeding[j]! += 1
  return exceeding
}
