import type {SexesAndStagesResult} from '../model/results.ts'
import type {Analysis} from './analysis.ts'
import {counted, words} from './counted.ts'
import {groupBy} from './group-by.ts'
import type {CatchInUse} from './season-records.ts'
import {addToCounts, totalOf, type UnitCounts, unitShare} from './unit-share.ts'

/** Sexes and life stages as recorded, over the whole catch, of the taxa of which there is something to tell. */
export function sexesAndStagesResult(analysis: Analysis): SexesAndStagesResult {
  const {names, catches, area} = analysis
  const byName = groupBy(catches, ({name}) => name)
  const result: SexesAndStagesResult = {sexes: [], stages: []}
  for (const recorded of names.names) {
    const own = byName.get(recorded) ?? []
    const {name: taxon} = recorded
    const byHabitat = groupBy(own, ({site}) => site.habitat)
    if (own.some(({sex, lifeStage}) => lifeStage === 'adult' && (sex === 'female' || sex === 'male'))) {
      result.sexes.push({
        taxon,
        ...sexesOf(own, analysis, taxon),
        habitats: area.habitats.map((habitat) => {
          const {id, label, style} = habitat
          return {id, label, style, ...sexesOf(byHabitat.get(habitat) ?? [], analysis, `${taxon}, ${label}`)}
        })
      })
    }
    if (own.some(({lifeStage}) => lifeStage !== 'adult')) {
      const stages = [...new Set(own.map(({lifeStage}) => lifeStage))].sort()
      result.stages.push({
        taxon,
        stages: stagesOf(own, stages, analysis, taxon),
        habitats: area.habitats.map((habitat) => {
          const {id, label, style} = habitat
          const here = stagesOf(byHabitat.get(habitat) ?? [], stages, analysis, `${taxon}, ${label}`)
          return {id, label, style, stages: here}
        })
      })
    }
  }
  return result
}

type Sexes = Pick<SexesAndStagesResult['sexes'][number], 'females' | 'males' | 'undetermined' | 'shareFemale'>

/** Adults by sex. The sexes walk unequally much, so their share in the catch is not that of the animals there. */
function sexesOf(catches: readonly CatchInUse[], {unit, confidence}: Analysis, where: string): Sexes {
  const females: UnitCounts = new Map()
  const known: UnitCounts = new Map()
  let undetermined = 0
  for (const each of catches) {
    if (each.lifeStage !== 'adult') continue
    if (each.sex === 'female') addToCounts(females, each, unit)
    if (each.sex === 'female' || each.sex === 'male') addToCounts(known, each, unit)
    else undetermined += each.count
  }
  const individuals = (what: string, value: number) => counted(`${what}, ${where}`, value, words.individuals)
  return {
    females: individuals('Females', totalOf(females)),
    males: individuals('Males', totalOf(known) - totalOf(females)),
    undetermined: individuals('Adults whose sex is not on record', undetermined),
    shareFemale: unitShare(
      `Share of females among adults of known sex, ${where}`,
      females,
      known,
      confidence,
      'no adult of known sex was caught there'
    )
  }
}

function stagesOf(
  catches: readonly CatchInUse[],
  stages: readonly string[],
  {unit, confidence}: Analysis,
  where: string
): SexesAndStagesResult['stages'][number]['stages'] {
  const all: UnitCounts = new Map()
  const byStage = new Map<string, UnitCounts>(stages.map((stage) => [stage, new Map()]))
  for (const each of catches) {
    addToCounts(all, each, unit)
    addToCounts(byStage.get(each.lifeStage)!, each, unit)
  }
  return stages.map((stage) => {
    const own = byStage.get(stage)!
    return {
      stage,
      individuals: counted(`Individuals, ${stage}, ${where}`, totalOf(own), words.individuals),
      share: unitShare(
        `Share of individuals, ${stage}, ${where}`,
        own,
        all,
        confidence,
        'no animal of that name was caught there'
      )
    }
  })
}
