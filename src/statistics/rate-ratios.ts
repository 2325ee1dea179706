import type {Quantity} from '../model/quantity.ts'
import {type CountModelFailure, isFitted} from './count-model.ts'
import {holm} from './holm.ts'
import type {GroupedCounts} from './likelihood-ratio-permutation.ts'
import {rateModel} from './rate-model.ts'
import {studentCdf, studentQuantile} from './special-functions.ts'

export interface RateRatio {
  readonly of: string | number
  readonly to: string | number
  /** Rate of `of` over rate of `to`; its standard error is that of its logarithm times the ratio. */
  readonly ratio: Quantity
  /** Two-sided, from t; approximate. */
  readonly p: Quantity
  /** Holm-adjusted over all pairs. */
  readonly adjustedP: Quantity
  /** Of the t distribution behind interval and p: the residual ones of the model. */
  readonly degreesOfFreedom: Quantity
}

export const rateRatioMethod =
  'approximate, t distribution with the residual degrees of freedom, standard error widened for the parameters'

/**
 * Ratios of the rates of every pair of groups from a negative binomial model with log link, offset ln effort,
 * and blocks where the design has them. Pairs in the order of `order`, or else in which units first show the
 * groups.
 *
 * Formula: exp(b_i - b_j); interval exp(b_i - b_j +- t(n - p) se sqrt(n/(n - p))), n units, p parameters (groups and
 * blocks), se given theta. The most likely 1/theta is on average (n - p)/n of the true one, as a variance with the
 * divisor n would be; the root makes up for it, in the Poisson model too. Only p is adjusted for the number of pairs.
 *
 * Source: the divisor n - p in place of n for a variance, and t in place of the normal distribution at few units, are
 * common practice, no source; how often the interval holds is measured in tests/simulation/results.md. Holm 1979,
 * Scand. J. Stat. 6:65-70.
 *
 * Edge cases: where the model fails every pair carries its message, so too where n = p leaves no residual degrees of
 * freedom. Fewer than two groups give no pairs.
 *
 * @example rateRatios({counts: [10, 20, 30, 60], efforts: [10, 10, 10, 10], groups: ['a', 'a', 'b', 'b']})[0].ratio.value.toFixed(6) // => '3.000000'
 * @example rateRatios({counts: [0, 0, 3, 6], efforts: [10, 10, 10, 10], groups: ['a', 'a', 'b', 'b']})[0].ratio // => {notDefined: 'a level of a factor caught nothing, so its rate ratio has no finite estimate'}
 * @example rateRatios({counts: [5, 7, 9, 8], efforts: [9, 9, 9, 9], groups: ['a', 'a', 'b', 'b'], blocks: [1, 2, 2, 3]})[0].p // => {notDefined: 'the factors cannot be told apart, or no unit is left to measure the spread by'}
 */
export function rateRatios(
  data: GroupedCounts,
  {confidence = 0.95, order = [...new Set(data.groups)]}: RateRatioOptions = {}
): RateRatio[] {
  const {model, contrastOf} = rateModel(data)
  const pairs = order.flatMap((to, index) => order.slice(index + 1).map((of) => ({of, to})))
  if (!isFitted(model)) return pairs.map((pair) => without(pair, model))
  const df = model.residualDegreesOfFreedom
  const widening = Math.sqrt(data.counts.length / df)
  const quantile = studentQuantile((1 + confidence) / 2, df)
  const estimates = pairs.map((pair) => {
    const baseline = contrastOf(pair.to)
    const contrast = contrastOf(pair.of).map((value, column) => value - baseline[column]!)
    const log = dot(contrast, model.coefficients)
    const variance = dot(
      contrast,
      model.covariance.map((row) => dot(row, contrast))
    )
    const standardError = Math.sqrt(variance) * widening
    return {...pair, log, standardError, p: 2 * studentCdf(-Math.abs(log) / standardError, df)}
  })
  const adjusted = holm(estimates.map(({p}) => p))
  return estimates.map(({of, to, log, standardError, p}, index) => ({
    of,
    to,
    ratio: {
      value: Math.exp(log),
      standardError: Math.exp(log) * standardError,
      interval: {
        low: Math.exp(log - quantile * standardError),
        high: Math.exp(log + quantile * standardError),
        confidence,
        method: rateRatioMethod
      }
    },
    p: {value: p},
    adjustedP: {value: adjusted[index]!},
    degreesOfFreedom: {value: df}
  }))
}

export interface RateRatioOptions {
  readonly confidence?: number
  /** Groups in the order to report them: each is compared to those before it. */
  readonly order?: readonly (string | number)[]
}

function without(pair: {of: string | number; to: string | number}, {message}: CountModelFailure): RateRatio {
  const none: Quantity = {notDefined: message}
  return {...pair, ratio: none, p: none, adjustedP: none, degreesOfFreedom: none}
}

function dot(first: readonly number[], second: readonly number[]): number {
  return first.reduce((sum, value, index) => sum + value * second[index]!, 0)
}
