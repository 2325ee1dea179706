import type {CatchResult, HabitatResult} from '../model/results.ts'
import type {Analysis} from './analysis.ts'
import {catchResult} from './catch.ts'
import {counted, share, words} from './counted.ts'
import {effortResult} from './effort.ts'
import type {Part, Parts} from './parts.ts'
import type {SeasonRecords} from './season-records.ts'

export function habitatResults(analysis: Analysis, parts: Parts): HabitatResult[] {
  const individuals = parts.study.catches.reduce((sum, {count, inRates}) => sum + (inRates ? count : 0), 0)
  return analysis.area.habitats.map((habitat) => {
    const part = parts.ofHabitat(habitat)
    const caught = catchResult(part, analysis)
    const own = 'value' in caught.individuals ? caught.individuals.value : 0
    const {id, label, style} = habitat
    return {
      id,
      label,
      style,
      ...statedOf(id, analysis),
      sites: counted(`Sites, ${label}`, new Set(part.traps.map(({site}) => site)).size, words.sites),
      traps: counted(`Traps, ${label}`, part.traps.length, words.traps),
      rounds: roundCount(part),
      effort: effortResult(part, analysis.planned),
      catch: caught,
      groups: groupCatches(part, analysis),
      shareOfCatch: share(
        `Share of all individuals in the rates, ${label}`,
        own,
        individuals,
        'nothing was caught'
      )
    }
  })
}

/** Catch of each scope in one part of the study. */
export function groupCatches(
  part: Part,
  analysis: Analysis
): {id: string; label: string; catch: CatchResult}[] {
  return analysis.scopes.map((scope) => {
    return {id: scope.id, label: scope.label, catch: catchResult(part, analysis, scope)}
  })
}

/** Rounds in which traps stood open here. */
export function roundCount({exposures, where}: Part) {
  const open = exposures.filter(({effort}) => !effort.closed)
  return counted(`Rounds, ${where}`, new Set(open.map(({round}) => round)).size, words.rounds)
}

function statedOf(id: string, {study}: SeasonRecords) {
  const stated = study.settings.habitats?.[id]
  if (stated === undefined || typeof stated === 'string') return {}
  return {
    ...(stated.assigned_by !== undefined && {assignedBy: stated.assigned_by}),
    ...(stated.vegetation !== undefined && {vegetation: stated.vegetation}),
    ...(stated.litter !== undefined && {litter: stated.litter}),
    ...(stated.soil !== undefined && {soil: stated.soil})
  }
}
