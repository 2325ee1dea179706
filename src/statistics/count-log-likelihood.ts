import {logGamma} from './special-functions.ts'

/** Above this count the sum of logarithms costs more than the digits that it saves. */
const longSum = 64

/**
 * Log-likelihood of counts under a negative binomial distribution with the given means and theta, or a
 * Poisson distribution where theta is Infinity; all constants included, so that the two can be compared.
 *
 * Formula: sum of [sum over j < y of ln(1 + j/theta)] - ln y! + y ln mu - (y + theta) ln(1 + mu/theta), which
 * is the usual ratio of gamma functions without its differences of large numbers; Poisson: y ln mu - mu - ln
 * y!.
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, 2nd ed., sections 6.2 and 11.2 (from memory).
 *
 * Edge cases: a mean of 0 is allowed where the count is 0.
 *
 * @example countLogLikelihood([0], [2], Infinity) // => -2
 * @example countLogLikelihood([0, 0], [0, 0], 3) // => 0
 */
export function countLogLikelihood(
  counts: readonly number[],
  means: readonly number[],
  theta: number
): number {
  const poisson = theta === Number.POSITIVE_INFINITY
  let sum = 0
  for (const [unit, count] of counts.entries()) {
    const mean = means[unit]!
    if (count > 0) sum += count * Math.log(mean) - logGamma(count + 1)
    sum -= poisson ? mean : (count + theta) * Math.log1p(mean / theta)
    if (!poisson) sum += logRisingFactorial(count, theta)
  }
  return sum
}

/** Twice the distance of the log-likelihood from that of a model whose means are the counts. */
export function countDeviance(counts: readonly number[], means: readonly number[], theta: number): number {
  const poisson = theta === Number.POSITIVE_INFINITY
  let sum = 0
  for (const [unit, count] of counts.entries()) {
    const mean = means[unit]!
    if (count > 0) sum += count * Math.log(count / mean)
    sum -= poisson ? count - mean : (count + theta) * Math.log1p((count - mean) / (mean + theta))
  }
  return 2 * sum
}

/** ln [Gamma(y + theta) / (Gamma(theta) theta^y)]. */
function logRisingFactorial(count: number, theta: number): number {
  if (count > longSum) {
    if (theta < largeTheta) return logGamma(count + theta) - logGamma(theta) - count * Math.log(theta)
    // Of a large theta the difference keeps no digits (1e-8 is lost at 1e7); here what is large has cancelled.
    const above = count + theta
    return (
      (above - 0.5) * Math.log1p(count / theta) - count + stirlingRemainder(above) - stirlingRemainder(theta)
    )
  }
  let sum = 0
  for (let j = 1; j < count; j += 1) sum += Math.log1p(j / theta)
  return sum
}

/** From here on the series of Stirling is exact to a double. */
const largeTheta = 64

/** ln Gamma(x) less (x - 1/2) ln x - x + ln(2 pi)/2 (Abramowitz & Stegun 1964, 6.1.41). */
function stirlingRemainder(x: number): number {
  const squared = x ** 2
  return (1 / 12 - (1 / 360 - 1 / 1260 / squared) / squared) / x
}
