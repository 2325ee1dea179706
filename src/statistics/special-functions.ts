import * as cephes from 'cephes'

// The module build compiles its WebAssembly in the background; importers get this file only when it is ready.
await cephes.compiled

/**
 * Distribution functions under the names that statistics uses. The numerics are those of the Cephes library
 * (Moshier 1989, Methods and Programs for Mathematical Functions). Arguments outside the stated range are our own
 * bug and throw a RangeError.
 */

/** z with P(Z <= z) = p for the standard normal; p strictly between 0 and 1. */
export function normalQuantile(p: number): number {
  return cephes.ndtri(p)
}

/** t with P(T <= t) = p for Student's t; p strictly between 0 and 1, whole degrees of freedom from 1 on. */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  return cephes.stdtri(wholeDegrees(degreesOfFreedom), p)
}

/** P(T <= t) for Student's t; whole degrees of freedom from 1 on. */
export function studentCdf(t: number, degreesOfFreedom: number): number {
  return cephes.stdtr(wholeDegrees(degreesOfFreedom), t)
}

/** P(X > x) for chi-square; x >= 0, degrees of freedom > 0. Tails smaller than a double can hold are 0. */
export function chiSquareUpperTail(x: number, degreesOfFreedom: number): number {
  const shape = degreesOfFreedom / 2
  const half = x / 2
  if (half === 0) return 1
  // Cephes raises an error where the tail underflows; this is its own criterion for that.
  if (half > shape && shape * Math.log(half) - half - cephes.lgam(shape) < -700) return 0
  return cephes.igamc(shape, half)
}

/** P(X <= x) for the beta distribution, the regularised incomplete beta function; 0 <= x <= 1, a and b > 0. */
export function betaCdf(x: number, a: number, b: number): number {
  return cephes.incbet(a, b, x)
}

/** ln Gamma(x), x > 0. Differences of two large values lose digits: about 3e-9 absolute at x = 1e6. */
export function logGamma(x: number): number {
  return cephes.lgam(x)
}

/** First derivative of ln Gamma at x > 0. */
export function digamma(x: number): number {
  return cephes.psi(x)
}

/** Second derivative of ln Gamma at x > 0: the Hurwitz zeta function of 2. */
export function trigamma(x: number): number {
  return cephes.zeta(2, x)
}

/** exp(x) times the exponential integral E1(x), x > 0; stays finite where E1 itself underflows. */
export function scaledExponentialIntegral(x: number): number {
  if (x <= 500) return Math.exp(x) * cephes.expn(1, x)
  let sum = 1
  let term = 1
  // The asymptotic series; at x > 500 ten terms are far below rounding.
  for (let k = 1; k <= 10; k++) {
    term *= -k / x
    sum += term
  }
  return sum / x
}

function wholeDegrees(degreesOfFreedom: number): number {
  // Cephes truncates fractions silently, which would give the interval of another design.
  if (!Number.isInteger(degreesOfFreedom) || degreesOfFreedom < 1) {
    throw new RangeError(`degrees of freedom must be a whole number from 1 on, not ${degreesOfFreedom}`)
  }
  return degreesOfFreedom
}
