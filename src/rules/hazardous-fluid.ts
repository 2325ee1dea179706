import {type FluidKind, fluidKind} from './fluid-kind.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

const hazards: Readonly<Partial<Record<FluidKind, string>>> = {
  'ethylene glycol': 'which is sweet and highly poisonous to pets and wildlife',
  formaldehyde: 'which is carcinogenic and makes people sensitive to it',
  methanol: 'which is poisonous by mouth, breath and skin, and flammable'
}

export const hazardousFluid = {
  code: 'hazardous-fluid',
  severity: 'caution',
  summary: 'a fluid is a danger to people, pets or wildlife',
  why: 'One trap of ethylene glycol can hold a deadly dose for a dog, and a bittering agent lessens that danger without ending it; a landowner must know.',
  remedy:
    'tell the landowner, guard and empty such traps, and next time use propylene glycol; local rules and the safety data sheet of the product come first',
  source:
    'ethylene glycol: Thomas 2008, lethal doses from veterinary pages after Osweiler et al. 2011; formaldehyde and methanol: common knowledge, from memory',
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'title: T\nfluids: {eg: {substance: ethylene glycol}}\n'},
      findings: [
        'study.yaml:2:26: `eg` is ethylene glycol, which is sweet and highly poisonous to pets and wildlife'
      ]
    },
    {
      files: {
        'study.yaml': 'title: T\nfluids: {eg: {substance: ethylene glycol}}\n',
        'visits.csv':
          'trap_id,opened,collected,sample,vertebrates_count\nW1-1,2026-05-04,2026-05-18,sorted,2\n'
      },
      findings: [
        'study.yaml:2:26: `eg` is ethylene glycol, which is sweet and highly poisonous to pets and wildlife; 2 vertebrates were found in the traps'
      ]
    }
  ],
  *check({settingPlace, exposures}, index) {
    for (const [id, stated] of index.fieldwork.fluids) {
      const kind = fluidKind(stated)
      const hazard = kind === undefined ? undefined : hazards[kind]
      if (hazard === undefined) continue
      const found = exposures.reduce((sum, {vertebratesCount = 0}) => sum + vertebratesCount, 0)
      const vertebrates =
        kind === 'ethylene glycol' && found > 0
          ? `; ${numberOf(found, 'vertebrate was', 'vertebrates were')} found in the traps`
          : ''
      yield {
        place: settingPlace(['fluids', id, 'substance']),
        message: `\`${id}\` is ${kind}, ${hazard}${vertebrates}`
      }
    }
  }
} as const satisfies Rule
