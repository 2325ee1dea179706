import type {Measure} from '../model/quantity.ts'
import type {ComparisonResult} from '../model/results.ts'
import {type CountModel, isFitted} from '../statistics/count-model.ts'
import {kruskalWallisPermutation} from '../statistics/kruskal-wallis-permutation.ts'
import {type GroupedCounts, likelihoodRatioPermutation} from '../statistics/likelihood-ratio-permutation.ts'
import {randomStream} from '../statistics/random-stream.ts'
import type {Analysis} from './analysis.ts'
import type {UnitInUse} from './comparable.ts'
import {counted, measured, words} from './counted.ts'
import {noPermutations, permutationsResult} from './permutations-result.ts'
import {raisedCount, type UnitCatches} from './sampling-units.ts'

/** Whose activity-density is compared. */
export interface Compared {
  /** Tells its random streams from those of other comparisons. */
  readonly id: string
  readonly label: string
  /** Catch of each sampling unit in the rounds compared. */
  readonly caught: UnitCatches
}

/** Each arrangement of the test costs a fit of the model, so that no more than these are drawn. */
const mostFits = 1999

type Say = (what: string) => string

/** The test of a difference between habitats: by the model where it can be fitted, else by ranks. */
export function testOf(
  model: CountModel,
  data: GroupedCounts,
  {id, caught}: Compared,
  units: readonly UnitInUse[],
  {seed, permutations}: Analysis,
  say: Say
): ComparisonResult['test'] {
  const random = randomStream(seed, `comparison/${id}`)
  const {groups, blocks} = data
  if (!isFitted(model) && model.failed === 'no catch') return noTest(say, model.message)
  const rates = units.map(({index, effort}) => raisedCount(caught.get(index)) / effort.net)
  const fitted = isFitted(model)
  const {statistic, degreesOfFreedom, p, scheme} = fitted
    ? likelihoodRatioPermutation(data, {limit: Math.min(permutations, mostFits), random})
    : kruskalWallisPermutation(rates, groups, {...(blocks && {blocks}), limit: permutations, random})
  return {
    statistic: measured(say(fitted ? 'Likelihood-ratio statistic' : 'Kruskal-Wallis H'), 'ratio', statistic),
    degreesOfFreedom: counted(
      say('Degrees of freedom of the test'),
      degreesOfFreedom,
      words.degreesOfFreedom
    ),
    p: measured(say('p of the difference between habitats'), 'probability', p),
    permutations: permutationsResult(scheme, say('comparison of habitats'))
  }
}

function noTest(say: Say, notDefined: string): ComparisonResult['test'] {
  const none = (what: string, kind: Measure['kind']): Measure => ({label: say(what), kind, notDefined})
  return {
    statistic: none('Statistic of the test', 'ratio'),
    degreesOfFreedom: none('Degrees of freedom of the test', 'count'),
    p: none('p of the difference between habitats', 'probability'),
    permutations: noPermutations(say('comparison of habitats'), notDefined)
  }
}

/** A comparison that the design does not support. */
export function withoutTest(
  say: Say,
  notDefined: string
): Pick<
  ComparisonResult,
  'method' | 'theta' | 'coefficients' | 'test' | 'ratios' | 'residualDegreesOfFreedom' | 'residuals'
> {
  return {
    method: 'none',
    theta: {label: say('Aggregation parameter theta'), kind: 'ratio', notDefined},
    coefficients: [],
    test: noTest(say, notDefined),
    ratios: [],
    residualDegreesOfFreedom: {label: say('Residual degrees of freedom'), kind: 'count', notDefined},
    residuals: []
  }
}
