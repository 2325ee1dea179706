import type {Stream} from './stream.ts'

/** Clumping: small numbers mean that many traps stay empty and a few are full. */
export type Clumping = 0.5 | 1 | 1.5 | 2

/**
 * One draw from a negative binomial of that mean and clumping (variance = mean + mean^2 / clumping), by
 * inversion. The clumping is a multiple of a half so that the first probability needs no power function.
 */
export function negativeBinomial(mean: number, clumping: Clumping, draw: Stream): number {
  const target = draw()
  const ratio = clumping / (clumping + mean)
  let probability = clumping % 1 === 0 ? 1 : Math.sqrt(ratio)
  for (let whole = Math.floor(clumping); whole > 0; whole--) probability *= ratio
  let cumulative = probability
  let count = 0
  while (cumulative < target && count < 500) {
    probability *= ((clumping + count) / (count + 1)) * (1 - ratio)
    count++
    cumulative += probability
  }
  return count
}
