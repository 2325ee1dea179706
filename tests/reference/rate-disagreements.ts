import {isDefined} from '../../src/model/quantity.ts'
import {betweenUnitsMethod, ratioRate} from '../../src/statistics/ratio-rate.ts'
import {disagreements} from './disagreement.ts'
import type {RateFigures} from './reference-file.ts'

/** Disagreements on one rate: the rate, the standard error of its logarithm, the limits and their kind. */
export function rateDisagreements(
  what: string,
  caught: readonly number[],
  nights: readonly number[],
  theirs: RateFigures
): readonly string[] {
  const ours = ratioRate(
    caught.map((count, unit) => ({count, effort: nights[unit]!})),
    {per: 100}
  )
  if (!isDefined(ours)) return [`${what}: not defined here`]
  const {value, standardError, interval} = ours
  const kind = interval?.method === betweenUnitsMethod ? 'ratio' : 'garwood'
  const ofLogarithm = standardError === undefined ? undefined : standardError / value
  return [
    ...(kind === theirs.interval ? [] : [`${what}: ${kind} here, ${theirs.interval} there`]),
    ...disagreements(
      what,
      [value, ofLogarithm, interval?.low, interval?.high],
      [theirs.rate, theirs.s, theirs.lower, theirs.upper]
    )
  ]
}
