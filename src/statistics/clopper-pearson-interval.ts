import type {Interval} from '../model/quantity.ts'
import {betaCdf} from './special-functions.ts'

/**
 * Exact confidence interval of a share from one sample of individuals. It holds counting error only: animals of one
 * kind that come together, or places that differ, spread more than this.
 *
 * Formula: with a = 1 - confidence, the a/2 quantile of the beta distribution of x and n - x + 1 and the 1 - a/2
 * quantile of that of x + 1 and n - x.
 *
 * Source: Clopper & Pearson 1934, Biometrika 26:404-413 (from memory).
 *
 * Edge cases: the lower limit at none is 0, the upper limit at all is 1.
 *
 * @throws RangeError where there is no sample, or where the part is not a whole number from 0 to the whole.
 *
 * @example clopperPearsonInterval(0, 10).high.toFixed(4) // => '0.3085'
 * @example clopperPearsonInterval(3, 10).low.toFixed(4) // => '0.0667'
 * @example clopperPearsonInterval(3, 10).high.toFixed(4) // => '0.6525'
 * @example clopperPearsonInterval(10, 10).high // => 1
 */
export function clopperPearsonInterval(part: number, whole: number, confidence = 0.95): Interval {
  if (!(Number.isSafeInteger(part) && Number.isSafeInteger(whole) && part >= 0 && part <= whole && whole > 0))
    throw new RangeError(`${part} of ${whole} is no share of a sample`)
  const tail = (1 - confidence) / 2
  return {
    low: part === 0 ? 0 : betaQuantile(tail, part, whole - part + 1),
    high: part === whole ? 1 : betaQuantile(1 - tail, part + 1, whole - part),
    confidence,
    method: 'exact binomial (Clopper & Pearson 1934)'
  }
}

/** The point up to which so much of a beta distribution lies, by halving. */
function betaQuantile(probability: number, a: number, b: number): number {
  let low = 0
  let high = 1
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2
    if (middle <= low || middle >= high) break
    if (betaCdf(middle, a, b) < probability) low = middle
    else high = middle
  }
  return (low + high) / 2
}
