import type {ComparisonResult} from '../model/results.ts'
import {isFitted} from '../statistics/count-model.ts'
import {designMatrix} from '../statistics/design-matrix.ts'
import {type GroupedCounts, logEfforts} from '../statistics/likelihood-ratio-permutation.ts'
import {negativeBinomialGlm} from '../statistics/negative-binomial-glm.ts'
import {activityDensity} from './activity-density.ts'
import type {Analysis} from './analysis.ts'
import type {Comparable, UnitInUse} from './comparable.ts'
import {modelParts, ratiosOf} from './comparison-model.ts'
import {type Compared, testOf, withoutTest} from './comparison-test.ts'
import {counted, measured, trapNights, words} from './counted.ts'
import {refusal} from './permutations-result.ts'
import {sortedCount} from './sampling-units.ts'
import type {HabitatInUse} from './study-area.ts'
import {unitRef} from './unit-ref.ts'

/** Activity-density of the habitats side by side, and the test of their difference where the design supports one. */
export function comparisonResult(
  compared: Compared,
  comparable: Comparable,
  analysis: Analysis
): ComparisonResult {
  const {supported, reasons, notes, habitats, leftOut, rounds, roundsLeftOut, units, blocks} = comparable
  const {label, caught} = compared
  const say = (what: string) => `${what}, ${label}`
  const frame = {
    supported,
    reasons: [...reasons],
    notes: [...notes],
    of: label,
    unit: analysis.unit,
    units: counted(say('Sampling units compared'), supported ? units.length : 0, words.units),
    blocks: counted(say('Blocks'), supported ? new Set(blocks ?? []).size : 0, words.blocks),
    rounds: rounds.map(({id}) => id),
    roundsLeftOut: roundsLeftOut.map(({id}) => id),
    habitats: supported ? habitats.map((habitat) => habitatLine(habitat, compared, units, analysis)) : [],
    leftOut: leftOut.map(({habitat: {id, label: name, style}, reason}) => ({id, label: name, style, reason}))
  }
  if (!supported) return {...frame, ...withoutTest(say, refusal(reasons))}
  const data: GroupedCounts = {
    counts: units.map(({index}) => sortedCount(caught.get(index))),
    efforts: units.map(({effort}) => effort.sortedNet),
    groups: units.map(({site}) => site.habitat.id),
    ...(blocks && {blocks})
  }
  const matrix = designMatrix(units.length, blocks ? [data.groups, blocks] : [data.groups])
  const model = negativeBinomialGlm({counts: data.counts, design: matrix.rows, offset: logEfforts(data)})
  return {
    ...frame,
    ...modelParts(model, matrix, habitats, say),
    test: testOf(model, data, compared, units, analysis, say),
    ratios: ratiosOf(data, habitats, units, analysis, say),
    residuals: isFitted(model)
      ? units.map((unit, index) => ({
          ...unitRef(unit),
          individuals: counted(`Individuals, ${unit.label}`, data.counts[index]!, words.individuals),
          net: trapNights(`Trap-nights that count, ${unit.label}`, unit.effort.net),
          expected: measured(`Individuals expected, ${unit.label}`, 'ratio', {value: model.means[index]!}),
          residual: measured(`Pearson residual, ${unit.label}`, 'ratio', {
            value: model.pearsonResiduals[index]!
          })
        }))
      : []
  }
}

function habitatLine(
  habitat: HabitatInUse,
  {label, caught}: Compared,
  units: readonly UnitInUse[],
  {confidence}: Analysis
): ComparisonResult['habitats'][number] {
  const own = units.filter(({site}) => site.habitat === habitat)
  const where = `${label}, ${habitat.label}, rounds compared`
  const individuals = own.reduce((sum, {index}) => sum + sortedCount(caught.get(index)), 0)
  const efforts = new Map(own.map(({index, effort}) => [index, effort]))
  return {
    id: habitat.id,
    label: habitat.label,
    style: habitat.style,
    units: counted(`Sampling units, ${where}`, own.length, words.units),
    individuals: counted(`Individuals, ${where}`, individuals, words.individuals),
    net: trapNights(
      `Trap-nights that count, ${where}`,
      own.reduce((sum, {effort}) => sum + effort.net, 0)
    ),
    rate: activityDensity(`Activity-density, ${where}`, caught, efforts, confidence)
  }
}
