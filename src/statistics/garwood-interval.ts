import type {Interval} from '../model/quantity.ts'
import {gammaQuantile} from './special-functions.ts'

/**
 * Exact confidence interval of the mean of a Poisson distribution from one count, in events. It holds counting
 * error only: animals that come in clumps, or places that differ, spread more than this.
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
    low: events === 0 ? 0 : gammaQuantile(tail, events),
    high: gammaQuantile(1 - tail, events + 1),
    confidence,
    method: 'exact Poisson (Garwood 1936)'
  }
}
