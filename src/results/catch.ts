import type {Measure} from '../model/quantity.ts'
import type {CatchResult} from '../model/results.ts'
import {activityDensity, rimActivityDensity} from './activity-density.ts'
import type {Analysis} from './analysis.ts'
import {counted, words} from './counted.ts'
import type {Part} from './parts.ts'
import {addToUnit, type UnitCatches} from './sampling-units.ts'
import type {Scope} from './scopes.ts'

/** What was caught in one part of the study, of all names or of one scope, and its activity-density. */
export function catchResult(part: Part, analysis: Analysis, scope?: Scope): CatchResult {
  const {unit, confidence, trapTypesDiffer} = analysis
  const where = scope === undefined ? part.where : `${scope.label}, ${part.where}`
  const names = new Set<number>()
  const caught: UnitCatches = new Map()
  let individuals = 0
  let outside = 0
  for (const each of part.catches) {
    const {name, lifeStage, count, inRates} = each
    if (scope !== undefined && !scope.holds(name, lifeStage)) continue
    if (!inRates) {
      outside += count
      continue
    }
    individuals += count
    names.add(name.index)
    addToUnit(caught, each, unit)
  }
  const rateLabel = `Activity-density, ${where}`
  return {
    individuals: counted(`Individuals in the rates, ${where}`, individuals, words.individuals),
    names: counted(`Names in the rates, ${where}`, names.size, words.names),
    outsideEffort: counted(`Individuals caught outside the effort, ${where}`, outside, words.individuals),
    total: counted(`Individuals recorded, ${where}`, individuals + outside, words.individuals),
    rate: activityDensity(rateLabel, caught, part.units, confidence),
    ...(trapTypesDiffer && {
      rimRate: rimActivityDensity(
        `Activity-density by metre of rim, ${where}`,
        caught,
        part.units,
        confidence
      )
    })
  }
}

/** The catch of a trap, which is not known where the catch of its site was pooled in the field. */
export function trapCatchResult(part: Part, analysis: Analysis, sitePooled: boolean): CatchResult {
  const known = catchResult(part, analysis)
  if (!sitePooled) return known
  const unknown = ({label, kind, unit}: Measure): Measure => {
    return {
      label,
      kind,
      ...(unit && {unit}),
      notDefined: 'its catch was pooled with that of other traps in the field'
    }
  }
  return {
    individuals: unknown(known.individuals),
    names: unknown(known.names),
    outsideEffort: unknown(known.outsideEffort),
    total: unknown(known.total),
    rate: unknown(known.rate),
    ...(known.rimRate && {rimRate: unknown(known.rimRate)})
  }
}
