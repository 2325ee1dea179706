import type {Quantity} from '../model/quantity.ts'
import type {ComparisonResult} from '../model/results.ts'
import {type CountModel, isFitted} from '../statistics/count-model.ts'
import type {DesignMatrix} from '../statistics/design-matrix.ts'
import {influence} from '../statistics/influence.ts'
import type {GroupedCounts} from '../statistics/likelihood-ratio-permutation.ts'
import {rateRatios} from '../statistics/rate-ratios.ts'
import type {Analysis} from './analysis.ts'
import type {UnitInUse} from './comparable.ts'
import {measured, words} from './counted.ts'
import type {HabitatInUse} from './study-area.ts'
import {unitRef} from './unit-ref.ts'

type Say = (what: string) => string

type ModelParts = Pick<
  ComparisonResult,
  'method' | 'message' | 'theta' | 'coefficients' | 'residualDegreesOfFreedom'
>

/** Which model stands, why, and its parameters. */
export function modelParts(
  model: CountModel,
  {rows, columnOf}: DesignMatrix,
  habitats: readonly HabitatInUse[],
  say: Say
): ModelParts {
  const theta = (quantity: Quantity) => measured(say('Aggregation parameter theta'), 'ratio', quantity)
  const degrees = (quantity: Quantity) =>
    measured(say('Residual degrees of freedom'), 'count', quantity, words.degreesOfFreedom)
  if (!isFitted(model)) {
    const none: Quantity = {notDefined: model.message}
    const why = `There is no model of counts, because ${model.message}`
    return {
      method: model.failed === 'no catch' ? 'none' : 'Kruskal-Wallis',
      message: model.failed === 'no catch' ? `${why}.` : `${why}; the rates are compared by ranks instead.`,
      theta: theta(none),
      coefficients: [],
      residualDegreesOfFreedom: degrees(none)
    }
  }
  const labels = new Map(habitats.map(({id, label}) => [id, label]))
  const terms = rows[0]!.map(() => 'intercept')
  for (const [factor, columns] of columnOf.entries()) {
    for (const [level, column] of columns) {
      terms[column] = factor === 0 ? (labels.get(`${level}`) ?? `${level}`) : `block ${level}`
    }
  }
  const poisson = model.family === 'Poisson'
  return {
    method: model.family,
    ...(poisson && {
      message: 'The catches spread no more than Poisson counts would, so that the Poisson model stands.'
    }),
    theta: theta(
      model.theta === undefined
        ? {notDefined: 'the catches spread no more than Poisson counts would'}
        : {
            value: model.theta,
            ...(Number.isFinite(model.thetaStandardError) && {standardError: model.thetaStandardError!})
          }
    ),
    coefficients: model.coefficients.map((value, column) => ({
      term: terms[column]!,
      estimate: measured(say(`Coefficient of ${terms[column]}`), 'ratio', {
        value,
        standardError: model.standardErrors[column]!
      })
    })),
    residualDegreesOfFreedom: degrees({value: model.residualDegreesOfFreedom})
  }
}

/** Ratio of the activity-densities of each pair of habitats, and what it is without the unit that moves it most. */
export function ratiosOf(
  data: GroupedCounts,
  habitats: readonly HabitatInUse[],
  units: readonly UnitInUse[],
  {confidence}: Analysis,
  say: Say
): ComparisonResult['ratios'] {
  const order = habitats.map(({id}) => id)
  const labels = new Map(habitats.map(({id, label}) => [id, label]))
  const moved = influence(data, order)
  return rateRatios(data, {confidence, order}).map(
    ({of, to, ratio, p, adjustedP, degreesOfFreedom}, pair) => {
      const [ofLabel, toLabel] = [labels.get(`${of}`)!, labels.get(`${to}`)!]
      const what = say(`${ofLabel} over ${toLabel}`)
      const {unit, ratioWithout} = moved[pair]!
      return {
        of: `${of}`,
        ofLabel,
        to: `${to}`,
        toLabel,
        ratio: measured(`Ratio of activity-densities, ${what}`, 'ratio', ratio),
        p: measured(`p of the ratio, ${what}`, 'probability', p),
        adjustedP: measured(`p of the ratio, Holm-adjusted, ${what}`, 'probability', adjustedP),
        degreesOfFreedom: measured(
          `Degrees of freedom of the ratio, ${what}`,
          'count',
          degreesOfFreedom,
          words.degreesOfFreedom
        ),
        ...(unit !== undefined && {influential: unitRef(units[unit]!)}),
        without: measured(`Ratio without the most influential unit, ${what}`, 'ratio', ratioWithout)
      }
    }
  )
}
