import type {Taxon} from '../model/study.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

const wholeMetamorphosis = ['nymph', 'juvenile', 'subadult']

/** Life stages that a group does not have, by class or order. */
const impossibleStages: Readonly<Record<string, readonly string[]>> = {
  araneae: ['larva', 'pupa', 'nymph'],
  opiliones: ['larva', 'pupa'],
  isopoda: ['larva', 'pupa', 'nymph'],
  chilopoda: ['pupa'],
  diplopoda: ['pupa'],
  orthoptera: ['pupa'],
  dermaptera: ['pupa'],
  blattodea: ['pupa'],
  coleoptera: wholeMetamorphosis,
  hymenoptera: wholeMetamorphosis,
  diptera: wholeMetamorphosis,
  lepidoptera: wholeMetamorphosis,
  neuroptera: wholeMetamorphosis
}

/** Groups whose animals are female and male at once. */
const hermaphrodites = new Set(['stylommatophora', 'clitellata', 'oligochaeta', 'lumbricidae'])

/** Stages that show no sex to anybody at the bench. */
const sexless = new Set(['larva', 'egg'])

export const impossibleSexOrStage = {
  code: 'impossible-sex-or-stage',
  severity: 'caution',
  summary: 'a sex or life stage is given that the group does not have',
  why: 'A young animal counts among the adults or not by this word; where the word cannot be right, nobody knows which.',
  remedy:
    'correct `life_stage` or `sex` in catch.csv; young spiders are `juvenile` or `subadult`, young beetles `larva`',
  source: 'textbook metamorphosis, from memory; a small table of common practice, no source',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count,life_stage\nW1-1,2026-05-18,Carabus problematicus,3,nymph\nW1-1,2026-06-01,Abax parallelepipedus,2,larva\n'
      },
      findings: ['catch.csv:2:41: Coleoptera have no `nymph` (1 row, Carabus problematicus)']
    },
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count,sex,life_stage\nW1-1,2026-05-18,Carabus problematicus,3,male,larva\n'
      },
      findings: ['catch.csv:2:41: a `larva` shows no sex (1 row, Carabus problematicus)']
    }
  ],
  *check({taxa}, index) {
    const groups = new Map(taxa.map((taxon) => [taxon.taxon, groupOf(taxon)]))
    const found = new Map<string, {row: number; column: string; taxon: string; rows: number}>()
    const note = (message: string, row: number, column: string, taxon: string) => {
      const seen = found.get(message)
      if (seen) seen.rows += 1
      else found.set(message, {row, column, taxon, rows: 1})
    }
    for (const {row, taxon, sex, lifeStage} of index.fieldwork.catch) {
      const sexed = sex === 'female' || sex === 'male'
      if (lifeStage === 'adult' && !sexed) continue
      const group = groups.get(taxon)
      if (group?.stages?.includes(lifeStage))
        note(`${group.name} have no \`${lifeStage}\``, row, 'life_stage', taxon)
      if (!sexed) continue
      if (group?.isHermaphrodite) note(`${group.name} are female and male at once`, row, 'sex', taxon)
      else if (sexless.has(lifeStage))
        note(`${lifeStage === 'egg' ? 'an' : 'a'} \`${lifeStage}\` shows no sex`, row, 'sex', taxon)
    }
    for (const [message, {row, column, taxon, rows}] of found) {
      yield {
        place: index.place('catch', row, column),
        message: `${message} (${numberOf(rows, 'row')}, ${rows === 1 ? '' : 'first '}${taxon})`
      }
    }
  }
} as const satisfies Rule

interface Group {
  readonly name: string
  readonly stages: readonly string[] | undefined
  readonly isHermaphrodite: boolean
}

function groupOf({class: className, order, family}: Taxon): Group | undefined {
  for (const name of [family, order, className]) {
    const known = name?.toLowerCase() ?? ''
    const stages = Object.hasOwn(impossibleStages, known) ? impossibleStages[known] : undefined
    const isHermaphrodite = hermaphrodites.has(known)
    if (name !== undefined && (stages !== undefined || isHermaphrodite))
      return {name, stages, isHermaphrodite}
  }
  return undefined
}
