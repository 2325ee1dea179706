import {countingErrorMethod} from '../model/counting-error.ts'
import type {Quantity} from '../model/quantity.ts'
import {garwoodInterval} from './garwood-interval.ts'
import {studentQuantile} from './special-functions.ts'

/** What one sampling unit yielded. */
export interface RateUnit {
  /**
   * Individuals as counted, a whole number; raised to the whole sample allowed where there are several units.
   */
  readonly count: number
  /**
   * Net effort behind the count; for counts as sorted from a fraction of a sample, effort times that
   * fraction.
   */
  readonly effort: number
}

export interface RateOptions {
  readonly confidence?: number
  /** The effort that the rate is given for: 100 gives a rate per 100 trap-nights. */
  readonly per?: number
}

export {countingErrorMethod}

export const betweenUnitsMethod = 'ratio estimate between sampling units, t distribution on the log scale'

/**
 * Catch rate over sampling units with its interval: individuals per `per` of effort.
 *
 * Formula: R = sum c / sum e. From two units on R exp(+-t(n - 1) s), s^2 = [n/(n - 1)] sum (c - R e)^2/(sum
 * c)^2; the standard error given is R s. Else the limits of Garwood for sum c, divided by sum e.
 *
 * Source: variance of a ratio of totals, Cochran 1977, Sampling Techniques, 3rd ed., section 6.4 (from
 * memory), carried to the log scale by the delta method. Garwood 1936, Biometrika 28:437-442.
 *
 * Edge cases: units without effort are left out. One unit, or no catch: Garwood, and the method says that it
 * is counting error only. No effort at all: not defined. Units that caught exactly alike give an interval
 * without width, and a caution.
 *
 * @throws RangeError where a count or effort is negative, a count has no effort behind it, or counting error
 * is asked of a count that is not whole.
 *
 * @example ratioRate([{count: 10, effort: 50}, {count: 20, effort: 50}], {per: 100}).value // => 30
 * @example ratioRate([{count: 919, effort: 6400}], {per: 100}).value // => 14.359375
 * @example ratioRate([{count: 0, effort: 50}]).interval.method // => countingErrorMethod
 * @example ratioRate([]) // => {notDefined: 'there was no effort'}
 */
export function ratioRate(
  units: readonly RateUnit[],
  {confidence = 0.95, per = 1}: RateOptions = {}
): Quantity {
  for (const unit of units) rejectImpossible(unit)
  const active = units.filter(({effort}) => effort > 0)
  const n = active.length
  if (n === 0) return {notDefined: 'there was no effort'}
  const count = active.reduce((sum, unit) => sum + unit.count, 0)
  const effort = active.reduce((sum, unit) => sum + unit.effort, 0)
  const rate = count / effort
  if (n === 1 || count === 0) {
    const {low, high} = garwoodInterval(count, confidence)
    return {
      value: rate * per,
      interval: {
        low: (low / effort) * per,
        high: (high / effort) * per,
        confidence,
        method: countingErrorMethod
      }
    }
  }
  const squares = active.reduce((sum, unit) => sum + (unit.count - rate * unit.effort) ** 2, 0)
  const standardErrorOfLog = Math.sqrt((n / (n - 1)) * squares) / count
  const factor = Math.exp(studentQuantile((1 + confidence) / 2, n - 1) * standardErrorOfLog)
  return {
    value: rate * per,
    standardError: rate * per * standardErrorOfLog,
    interval: {
      low: (rate / factor) * per,
      high: rate * factor * per,
      confidence,
      method: betweenUnitsMethod
    },
    ...(squares <= (1e-9 * count) ** 2 && {
      caution: 'the units caught exactly alike, so the range has no width'
    })
  }
}

function rejectImpossible({count, effort}: RateUnit): void {
  if (!(count >= 0 && count < Number.POSITIVE_INFINITY)) throw new RangeError(`${count} is no count`)
  if (!(effort >= 0 && effort < Number.POSITIVE_INFINITY)) throw new RangeError(`${effort} is no effort`)
  if (count > 0 && effort === 0) throw new RangeError('a count without effort has no rate')
}
