import {isDefined, type Quantity} from '../model/quantity.ts'
import type {ComparisonResult, PlanningResult} from '../model/results.ts'
import {randomStream} from '../statistics/random-stream.ts'
import {type DetectionLayout, smallestDetectableRatio} from '../statistics/smallest-detectable-ratio.ts'
import type {Analysis} from './analysis.ts'
import type {Comparable} from './comparable.ts'
import type {Compared} from './comparison-test.ts'
import {counted, measured, words} from './counted.ts'
import {refusal} from './permutations-result.ts'
import {sortedCount} from './sampling-units.ts'

/** Common practice, no source. */
const level = 0.05
const power = 0.8

/** Enough for a ratio to about three per cent, few enough for the patience of a reader. */
const simulations = 200

/**
 * The smallest ratio that the layout of the comparison would show, with the theta of its model. The habitat whose
 * units catch least is raised: of the others smaller ratios would show.
 */
export function detectionResult(
  compared: Compared,
  comparison: ComparisonResult,
  comparable: Comparable,
  {seed}: Analysis
): PlanningResult['detection'] {
  const layout = layoutOf(compared, comparison, comparable)
  const ratio =
    'notDefined' in layout
      ? layout
      : smallestDetectableRatio(layout, {
          random: randomStream(seed, `smallest detectable ratio/${compared.id}`),
          level,
          power,
          simulations
        })
  const raised =
    'notDefined' in layout ? undefined : comparable.habitats.find(({id}) => id === layout.raised)?.label
  return {
    ratio: measured(`Smallest ratio that the layout would show, ${compared.label}`, 'ratio', ratio),
    ...(raised !== undefined && {raised}),
    level: {label: 'Largest p called a difference', kind: 'number', value: level},
    power: {label: 'Share of seasons in which it is to be found', kind: 'share', value: power},
    simulations: counted('Seasons simulated for each ratio', simulations, words.seasons)
  }
}

function layoutOf(
  {caught}: Compared,
  {theta, method, test}: ComparisonResult,
  {supported, reasons, habitats, units, blocks}: Comparable
): DetectionLayout | Extract<Quantity, {notDefined: string}> {
  if (!supported) return {notDefined: refusal(reasons)}
  if (method !== 'negative binomial' && method !== 'Poisson') {
    return {
      notDefined: isDefined(test.p) ? 'there is no model of counts to simulate from' : test.p.notDefined
    }
  }
  const inBlock = (unit: number, other: number) => blocks === undefined || blocks[unit] === blocks[other]
  // Where no habitat differs, units catch in proportion to their effort, within blocks.
  const expected = units.map(({effort}, unit) => {
    const own = units.filter((_, other) => inBlock(unit, other))
    const count = own.reduce((sum, {index}) => sum + sortedCount(caught.get(index)), 0)
    const sorted = own.reduce((sum, each) => sum + each.effort.sortedNet, 0)
    return (count / sorted) * effort.sortedNet
  })
  const groups = units.map(({site}) => site.habitat.id)
  const total = (id: string) =>
    expected.reduce((sum, count, unit) => sum + (groups[unit] === id ? count : 0), 0)
  const least = habitats.reduce((one, other) => (total(other.id) < total(one.id) - 1e-9 ? other : one))
  return {
    expected,
    groups,
    raised: least.id,
    theta: isDefined(theta) ? theta.value : Number.POSITIVE_INFINITY,
    ...(blocks && {blocks})
  }
}
