import {countLogLikelihood} from './count-log-likelihood.ts'
import {betaCdf, chiSquareUpperTail, normalQuantile} from './special-functions.ts'

/**
 * Quantile of a negative binomial count, or of a Poisson count where theta is Infinity: a uniform random
 * number put through it is a random count, and a larger mean never gives a smaller one for the same number.
 *
 * Formula: smallest y with P(Y <= y) >= p; P(Y <= y) is the regularised incomplete beta function at
 * theta/(theta + mu) with theta and y + 1; Poisson: the upper tail of chi-square with 2 y + 2 degrees of
 * freedom at 2 mu. Near the middle of the distribution it is asked once, at a guess, from which single
 * probabilities lead on.
 *
 * Source: inversion, Devroye 1986, Non-Uniform Random Variate Generation, section III.2 (from memory); the
 * guess is that of Cornish & Fisher 1938, Rev. Inst. Int. Stat. 5:307-320 (from memory).
 *
 * Edge cases: a mean of 0 gives 0; p of 0 gives 0.
 *
 * @throws RangeError where p is not from 0 to below 1.
 *
 * @example countQuantile(0.5, 10, Infinity) // => 10
 * @example countQuantile(0.5, 10, 1) // => 7
 * @example countQuantile(0.5, 0, 1) // => 0
 */
export function countQuantile(p: number, mean: number, theta: number): number {
  if (!(p >= 0 && p < 1)) throw new RangeError(`${p} is no probability below 1`)
  if (mean === 0 || p === 0) return 0
  const isMiddle = p > 1e-6 && p < 1 - 1e-6
  return (isMiddle ? fromGuess(p, mean, theta) : undefined) ?? byHalving(p, mean, theta)
}

/** Undefined where the guess is so far off that its probability has no digits. */
function fromGuess(p: number, mean: number, theta: number): number | undefined {
  const deviation = Math.sqrt(mean + mean ** 2 / theta)
  const z = normalQuantile(p)
  const skewness = (1 + (2 * mean) / theta) / deviation
  let count = Math.max(0, Math.round(mean + deviation * (z + ((z * z - 1) * skewness) / 6) - 0.5))
  let chance = Math.exp(countLogLikelihood([count], [mean], theta))
  if (chance < 1e-200) return undefined
  let reached = cumulative(count, mean, theta)
  const poisson = theta === Number.POSITIVE_INFINITY
  const ratioAfter = (before: number): number =>
    poisson ? mean / (before + 1) : ((before + theta) / (before + 1)) * (mean / (mean + theta))
  if (reached < p) {
    while (reached < p) {
      chance *= ratioAfter(count)
      count += 1
      reached += chance
      if (chance < 1e-200) return undefined
    }
    return count
  }
  while (count > 0 && reached - chance >= p) {
    reached -= chance
    count -= 1
    chance /= ratioAfter(count)
  }
  return count
}

function byHalving(p: number, mean: number, theta: number): number {
  const reaches = (count: number): boolean => cumulative(count, mean, theta) >= p
  if (reaches(0)) return 0
  // Far above the mean the incomplete gamma function of Cephes breaks off with an underflow: go in small
  // strides.
  const stride = 8 + Math.ceil(8 * Math.sqrt(mean + mean ** 2 / theta))
  let below = 0
  let above = Math.ceil(mean) + stride
  while (!reaches(above)) {
    below = above
    above += stride
  }
  while (above - below > 1) {
    const middle = Math.floor((below + above) / 2)
    if (reaches(middle)) above = middle
    else below = middle
  }
  return above
}

function cumulative(count: number, mean: number, theta: number): number {
  return theta === Number.POSITIVE_INFINITY
    ? chiSquareUpperTail(2 * mean, 2 * count + 2)
    : betaCdf(theta / (theta + mean), theta, count + 1)
}
