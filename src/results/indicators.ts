import type {IndicatorsResult} from '../model/results.ts'
import {indicatorValueTest} from '../statistics/indicator-value-test.ts'
import {randomStream} from '../statistics/random-stream.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import type {Comparable} from './comparable.ts'
import {counted, measured, words} from './counted.ts'
import {noPermutations, permutationsResult, refusal} from './permutations-result.ts'
import type {Scope} from './scopes.ts'
import type {Communities} from './unit-catches.ts'

/** Indicator values of the species of a scope for the habitats compared, largest first. */
export function indicatorsResult(
  {species, communities}: Communities,
  scope: Scope,
  {supported, reasons, notes, habitats, units, blocks: allBlocks}: Comparable,
  {seed, permutations}: Analysis
): IndicatorsResult {
  const say = (what: string) => `${what}, ${scope.label}`
  const frame = {supported, reasons: [...reasons], notes: [...notes]}
  const floorLabel = say('Smallest p times species tested')
  if (!supported) {
    const notDefined = refusal(reasons)
    return {
      ...frame,
      tested: counted(say('Species tested'), 0, words.species),
      permutations: noPermutations(say('indicator values'), notDefined),
      adjustedFloor: {label: floorLabel, kind: 'probability', notDefined},
      withheld: false,
      species: []
    }
  }
  const compared = new Set(units.map(({index}) => index))
  const rows = communities.filter(({unit}) => compared.has(unit.index))
  const groups = rows.map(({unit}) => unit.site.habitat.id)
  const blocks = allBlocks && rows.map(({unit}) => unit.site.record.block!)
  const test = indicatorValueTest(
    species.map((_, column) => rows.map(({rates}) => rates[column]!)),
    groups,
    {
      ...(blocks && {blocks}),
      limit: permutations,
      random: randomStream(seed, `indicator values/${scope.id}`)
    }
  )
  const byId = new Map(habitats.map((habitat) => [habitat.id, habitat]))
  return {
    ...frame,
    tested: counted(say('Species tested'), test.tested, words.species),
    permutations: permutationsResult(test.scheme, say('indicator values')),
    adjustedFloor: {label: floorLabel, kind: 'probability', value: Math.min(1, test.adjustedFloor)},
    withheld: test.withheld,
    ...(test.withheld && {
      message: `p is not given, because the smallest p that the design allows, times the ${test.tested} species tested, exceeds 0.05.`
    }),
    species: test.species
      .map(({species: column, group, specificity, fidelity, value, p, adjustedP}) => {
        const taxon = species[column]!
        const {id, label, style} = byId.get(`${group}`)!
        const what = (name: string) => say(`${name}, ${taxon} in ${label}`)
        return {
          taxon,
          id,
          label,
          style,
          specificity: measured(what('Specificity A'), 'ratio', {value: specificity}),
          fidelity: measured(what('Fidelity B'), 'ratio', {value: fidelity}),
          value: measured(what('Indicator value'), 'ratio', {value}),
          p: measured(what('p of the indicator value'), 'probability', p),
          adjustedP: measured(what('p of the indicator value, Holm-adjusted'), 'probability', adjustedP),
          order: value
        }
      })
      .sort((a, b) => b.order - a.order || codeUnitOrder(a.taxon, b.taxon))
      .map(({order: _, ...line}) => line)
  }
}
