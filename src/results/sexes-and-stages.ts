import type {SexesAndStagesResult} from '../model/results.ts'
import type {Analysis} from './analysis.ts'
import {counted, share, words} from './counted.ts'
import {groupBy} from './group-by.ts'
import type {CatchInUse} from './season-records.ts'

/** Sexes and life stages as recorded, over the whole catch, of the taxa of which there is something to tell. */
export function sexesAndStagesResult({names, catches, area}: Analysis): SexesAndStagesResult {
  const byName = groupBy(catches, ({name}) => name)
  const result: SexesAndStagesResult = {sexes: [], stages: []}
  for (const recorded of names.names) {
    const own = byName.get(recorded) ?? []
    const {name: taxon} = recorded
    const byHabitat = groupBy(own, ({site}) => site.habitat)
    if (own.some(({sex, lifeStage}) => lifeStage === 'adult' && (sex === 'female' || sex === 'male'))) {
      result.sexes.push({
        taxon,
        ...sexesOf(own, taxon),
        habitats: area.habitats.map((habitat) => {
          const {id, label, style} = habitat
          return {id, label, style, ...sexesOf(byHabitat.get(habitat) ?? [], `${taxon}, ${label}`)}
        })
      })
    }
    if (own.some(({lifeStage}) => lifeStage !== 'adult')) {
      const stages = [...new Set(own.map(({lifeStage}) => lifeStage))].sort()
      result.stages.push({
        taxon,
        stages: stagesOf(own, stages, taxon),
        habitats: area.habitats.map((habitat) => {
          const {id, label, style} = habitat
          const here = stagesOf(byHabitat.get(habitat) ?? [], stages, `${taxon}, ${label}`)
          return {id, label, style, stages: here}
        })
      })
    }
  }
  return result
}

type Sexes = Pick<SexesAndStagesResult['sexes'][number], 'females' | 'males' | 'undetermined' | 'shareFemale'>

/** Adults by sex. The sexes walk unequally much, so their share in the catch is not that of the animals there. */
function sexesOf(catches: readonly CatchInUse[], where: string): Sexes {
  let [females, males, undetermined] = [0, 0, 0]
  for (const {lifeStage, sex, count} of catches) {
    if (lifeStage !== 'adult') continue
    if (sex === 'female') females += count
    else if (sex === 'male') males += count
    else undetermined += count
  }
  const individuals = (what: string, value: number) => counted(`${what}, ${where}`, value, words.individuals)
  return {
    females: individuals('Females', females),
    males: individuals('Males', males),
    undetermined: individuals('Adults whose sex is not on record', undetermined),
    shareFemale: share(
      `Share of females among adults of known sex, ${where}`,
      females,
      females + males,
      'no adult of known sex was caught there'
    )
  }
}

function stagesOf(catches: readonly CatchInUse[], stages: readonly string[], where: string) {
  return stages.map((stage) => {
    const own = catches.filter(({lifeStage}) => lifeStage === stage)
    return {
      stage,
      individuals: counted(
        `Individuals, ${stage}, ${where}`,
        own.reduce((sum, {count}) => sum + count, 0),
        words.individuals
      )
    }
  })
}
