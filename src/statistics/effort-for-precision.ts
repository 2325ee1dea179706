import type {Quantity} from '../model/quantity.ts'
import {studentQuantile} from './special-functions.ts'

/** What a season has shown of one group of sampling units, and how narrow its range is to become. */
export interface PrecisionGoal {
  /** Rate per unit of effort. */
  readonly rate: number
  /** Aggregation of the counts of units; Infinity for Poisson. */
  readonly theta: number
  readonly units: number
  /** Effort of all units together. */
  readonly effort: number
  /** Half the width of the interval over the rate: 0.3 for plus or minus 30 %. */
  readonly relativeHalfWidth: number
  readonly confidence?: number
}

export interface EffortForPrecision {
  /** Half the width over the rate with units and effort as they are. */
  readonly present: Quantity
  /** Total effort that reaches the goal at the same units. */
  readonly totalEffort: Quantity
  /** Units that reach the goal, each with the present mean effort. */
  readonly units: Quantity
}

const unitLimit = 10_000

const precisionCaution = 'estimate: rate and clumping are taken to stay as they were'

/**
 * Effort, or sampling units, for a target relative half-width of a catch rate.
 *
 * Formula: the interval R exp(+-t(n - 1) s) has half-width R sinh(t s), s^2 = 1/(R E) + 1/(n theta) for n
 * units of equal effort, E in all (negative binomial, delta method). Same units: E = 1/(R (s*^2 - 1/(n
 * theta))), s* = asinh(goal)/t(n - 1). More units: the smallest n >= 2 with sinh(t(n - 1) sqrt((1/(R e) +
 * 1/theta)/n)) <= goal.
 *
 * Source: variance of the mean of a negative binomial, Bliss & Fisher 1953, Biometrics 9:176-200; sample size
 * for a fixed relative precision, Southwood & Henderson 2000, Ecological Methods, 3rd ed., chapter 2 (from
 * memory).
 *
 * Edge cases: clumping between units, 1/(n theta), is a floor that effort at the same units cannot pass: not
 * defined then, and only more units help. One unit has no range between units. No catch, no effort: not
 * defined.
 *
 * @throws RangeError where the goal is not above 0.
 *
 * @example effortForPrecision({rate: 0.5, theta: Infinity, units: 4, effort: 400, relativeHalfWidth: 0.3}).totalEffort.value.toFixed(1) // => '231.7'
 * @example effortForPrecision({rate: 0.5, theta: 1, units: 4, effort: 400, relativeHalfWidth: 0.3}).totalEffort // => {notDefined: 'the units differ too much for effort alone: more units are needed'}
 * @example effortForPrecision({rate: 0.5, theta: 1, units: 4, effort: 400, relativeHalfWidth: 0.3}).units.value // => 48
 */
export function effortForPrecision({
  rate,
  theta,
  units,
  effort,
  relativeHalfWidth,
  confidence = 0.95
}: PrecisionGoal): EffortForPrecision {
  if (!(relativeHalfWidth > 0)) throw new RangeError('a half-width must be above 0')
  const none = (notDefined: string): EffortForPrecision => ({
    present: {notDefined},
    totalEffort: {notDefined},
    units: {notDefined}
  })
  if (!(effort > 0)) return none('there was no effort')
  if (!(rate > 0)) return none('nothing was caught')
  const quantile = (unitCount: number): number => studentQuantile((1 + confidence) / 2, unitCount - 1)
  const perUnit = 1 / (rate * (effort / units)) + 1 / theta
  const halfWidth = (unitCount: number): number =>
    Math.sinh(quantile(unitCount) * Math.sqrt(perUnit / unitCount))
  const caution = precisionCaution
  return {
    present: units < 2 ? {notDefined: 'there is only one unit'} : {value: halfWidth(units), caution},
    totalEffort: ((): Quantity => {
      if (units < 2) return {notDefined: 'there is only one unit'}
      const room = (Math.asinh(relativeHalfWidth) / quantile(units)) ** 2 - 1 / (units * theta)
      if (room <= 0) return {notDefined: 'the units differ too much for effort alone: more units are needed'}
      return {value: 1 / (rate * room), caution}
    })(),
    units: ((): Quantity => {
      for (let unitCount = 2; unitCount <= unitLimit; unitCount += 1) {
        if (halfWidth(unitCount) <= relativeHalfWidth) return {value: unitCount, caution}
      }
      return {notDefined: 'more units than could be run would be needed'}
    })()
  }
}
