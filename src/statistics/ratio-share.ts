import type {Quantity} from '../model/quantity.ts'
import {clopperPearsonInterval} from './clopper-pearson-interval.ts'
import {countingErrorMethod} from './ratio-rate.ts'
import {studentQuantile} from './special-functions.ts'

/** What one sampling unit yielded. */
export interface ShareUnit {
  /** Individuals of the kind asked for. */
  readonly part: number
  /** Individuals of all kinds. */
  readonly whole: number
}

export const shareBetweenUnitsMethod =
  'ratio estimate between sampling units, t distribution on the logit scale'

/**
 * Share of the individuals caught that are of one kind, over sampling units, with its interval.
 *
 * Formula: p = sum a / sum m. From two units with animals on: logit p +- t(n - 1) s/(p (1 - p)), carried back, with
 * s^2 the larger of [n/(n - 1)] sum (a - p m)^2/(sum m)^2 and p (1 - p)/sum m. Else the limits of Clopper and Pearson
 * for sum a of sum m.
 *
 * Source: proportions in cluster sampling, Cochran 1977, Sampling Techniques, 3rd ed., section 3.12 (from memory),
 * carried to the logit scale by the delta method. Clopper & Pearson 1934, Biometrika 26:404-413 (from memory). That
 * a range between units is no narrower than one of animals drawn singly is our own choice: units with few animals
 * are alike by chance (tests/simulation/results.md says how often the interval holds).
 *
 * Edge cases: units without animals say nothing of a share and are left out. One unit, or a share of 0 or 1: Clopper
 * and Pearson, and the method says that it is counting error only. No animals at all: not defined.
 *
 * @throws RangeError where a unit holds more of the kind than in all, or numbers are not whole.
 *
 * @example ratioShare([{part: 3, whole: 10}]).interval.method // => countingErrorMethod
 * @example ratioShare([{part: 10, whole: 40}, {part: 20, whole: 40}]).value // => 0.375
 * @example ratioShare([{part: 10, whole: 40}, {part: 20, whole: 40}, {part: 18, whole: 40}]).interval.low.toFixed(4) // => '0.1450'
 * @example ratioShare([]) // => {notDefined: 'no animals were caught'}
 */
export function ratioShare(units: readonly ShareUnit[], confidence = 0.95): Quantity {
  for (const {part, whole} of units) {
    if (!(Number.isSafeInteger(part) && Number.isSafeInteger(whole) && part >= 0 && part <= whole))
      throw new RangeError(`${part} of ${whole} is no share`)
  }
  const active = units.filter(({whole}) => whole > 0)
  const n = active.length
  if (n === 0) return {notDefined: 'no animals were caught'}
  const part = active.reduce((sum, unit) => sum + unit.part, 0)
  const whole = active.reduce((sum, unit) => sum + unit.whole, 0)
  const value = part / whole
  if (n === 1 || part === 0 || part === whole) {
    const interval = clopperPearsonInterval(part, whole, confidence)
    return {value, interval: {...interval, method: countingErrorMethod}}
  }
  const squares = active.reduce((sum, unit) => sum + (unit.part - value * unit.whole) ** 2, 0)
  const drawnSingly = (value * (1 - value)) / whole
  const standardError = Math.sqrt(Math.max(((n / (n - 1)) * squares) / whole ** 2, drawnSingly))
  const logit = Math.log(part / (whole - part))
  const reach = (studentQuantile((1 + confidence) / 2, n - 1) * standardError) / (value * (1 - value))
  return {
    value,
    standardError,
    interval: {
      low: shareOf(logit - reach),
      high: shareOf(logit + reach),
      confidence,
      method: shareBetweenUnitsMethod
    }
  }
}

function shareOf(logit: number): number {
  return 1 / (1 + Math.exp(-logit))
}
