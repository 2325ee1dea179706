import {scaledExponentialIntegral} from './special-functions.ts'

/**
 * Sum over k >= 1 of x^k / (start + k), for 0 <= x < 1 and start >= 0, to about full precision.
 *
 * It is the remainder of the logarithmic series, -x^(-start) (ln(1-x) + sum of its first terms), which as a
 * difference cancels away for a large start. Here it is summed as one: the first thousand terms directly, the rest
 * by the Euler-Maclaurin formula, whose integral is an exponential integral (Abramowitz & Stegun 1964, 3.6.28 and
 * 5.1.1). So x may be as near to 1 as it likes.
 *
 * x is given as 1 - gap, because the gap is what is known with all its digits.
 */
export function logarithmicTail(gap: number, start: number): number {
  const x = 1 - gap
  if (x <= 0) return 0
  const rate = -Math.log1p(-gap)
  let sum = 0
  for (let k = 1; k < DIRECT; k++) {
    const term = Math.exp(-rate * k) / (start + k)
    sum += term
    // What remains is at most term x / gap.
    if (term * x < sum * gap * 1e-17) return sum
  }
  const at = start + DIRECT
  const decay = Math.exp(-rate * DIRECT)
  const term = decay / at
  const slope = -term * (rate + 1 / at)
  const third = -term * (rate ** 3 + (3 * rate ** 2) / at + (6 * rate) / at ** 2 + 6 / at ** 3)
  return sum + decay * scaledExponentialIntegral(rate * at) + term / 2 - slope / 12 + third / 720
}

const DIRECT = 1000
