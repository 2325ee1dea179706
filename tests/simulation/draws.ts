import type {RandomStream} from '../../src/statistics/random-stream.ts'
import {normalQuantile} from '../../src/statistics/special-functions.ts'

/** A draw from the standard normal distribution, by inversion. */
export function normalDraw(stream: RandomStream): number {
  // Half a step up, so that 0 is never asked for.
  return normalQuantile(stream.uniform() + 2 ** -54)
}

/**
 * A draw from the gamma distribution of this shape with mean 1: by how much a site, or a trap, catches more than
 * the mean of all. Variance 1/shape. Rejection of Marsaglia & Tsang 2000, ACM Trans. Math. Softw. 26:363-372.
 */
export function gammaDraw(stream: RandomStream, shape: number): number {
  if (shape === Number.POSITIVE_INFINITY) return 1
  if (shape < 1) {
    const larger = gammaDraw(stream, shape + 1) * (shape + 1)
    return (larger * (1 - stream.uniform()) ** (1 / shape)) / shape
  }
  const d = shape - 1 / 3
  const c = 1 / Math.sqrt(9 * d)
  for (;;) {
    const normal = normalDraw(stream)
    const cube = (1 + c * normal) ** 3
    if (cube <= 0) continue
    if (Math.log(1 - stream.uniform()) < normal ** 2 / 2 + d - d * cube + d * Math.log(cube)) {
      return (d * cube) / shape
    }
  }
}

/** A draw from the Poisson distribution: inversion, a large mean as the sum of smaller ones. */
export function poissonDraw(stream: RandomStream, mean: number): number {
  if (mean > 200) return poissonDraw(stream, mean / 2) + poissonDraw(stream, mean / 2)
  let left = stream.uniform()
  let chance = Math.exp(-mean)
  let count = 0
  while (left >= chance && chance > 0) {
    left -= chance
    count += 1
    chance *= mean / count
  }
  return count
}
