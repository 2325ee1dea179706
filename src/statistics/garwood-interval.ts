import type {Interval} from '../model/quantity.ts'
import {chiSquareUpperTail} from './special-functions.ts'

/**
 * Exact confidence interval of the mean of a Poisson distribution from one count, in events. It holds
 * counting error only: animals that come in clumps, or places that differ, spread more than this.
 *
 * Formula: with a = 1 - confidence, the a/2 quantile of the gamma distribution of shape x and the 1 - a/2
 * quantile of shape x + 1 (half the chi-square quantiles of 2 x and 2 x + 2 degrees of freedom).
 *
 * Source: Garwood 1936, Biometrika 28:437-442.
 *
 * Edge cases: the lower limit at 0 events is 0.
 *
 * @throws RangeError where the events are not a whole number from 0 on.
 *
 * @example garwoodInterval(0).low // => 0
 * @example garwoodInterval(0).high.toFixed(4) // => '3.6889'
 * @example garwoodInterval(10).low.toFixed(4) // => '4.7954'
 * @example garwoodInterval(10).high.toFixed(4) // => '18.3904'
 */
export function garwoodInterval(events: number, confidence = 0.95): Interval {
  if (!Number.isSafeInteger(events) || events < 0) throw new RangeError(`${events} is no count of events`)
  const tail = (1 - confidence) / 2
  return {
    low: events === 0 ? 0 : meanWithTail(events - 1, 1 - tail),
    high: meanWithTail(events, tail),
    confidence,
    method: 'exact Poisson (Garwood 1936)'
  }
}

/**
 * The mean at which at most so many events have this probability, by halving: the inverse gamma function of
 * Cephes breaks off with an underflow for some counts from about 3700 on.
 */
function meanWithTail(events: number, probability: number): number {
  const reach = 10 * Math.sqrt(events + 1) + 20
  let low = Math.max(0, events - reach)
  let high = events + reach
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2
    if (middle <= low || middle >= high) break
    // P(Y <= y) at mean m is the upper tail of chi-square with 2 y + 2 degrees of freedom at 2 m.
    if (chiSquareUpperTail(2 * middle, 2 * events + 2) > probability) low = middle
    else high = middle
  }
  return (low + high) / 2
}
