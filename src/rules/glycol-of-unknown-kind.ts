import {fluidKind} from './fluid-kind.ts'
import type {Rule} from './rule.ts'

export const glycolOfUnknownKind = {
  code: 'glycol-of-unknown-kind',
  severity: 'caution',
  summary: 'a fluid is called glycol or antifreeze, and nobody says which',
  why: 'Ethylene glycol is a poison that animals drink, propylene glycol is not; they also keep animals differently, so nobody can repeat the study.',
  remedy: 'write `ethylene glycol` or `propylene glycol`, as the label of the can says',
  source: 'Thomas 2008',
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'title: T\nfluids: {g: {substance: car antifreeze}}\n'},
      findings: ['study.yaml:2:25: `car antifreeze` may be ethylene or propylene glycol']
    }
  ],
  *check({settingPlace}, index) {
    for (const [id, stated] of index.fieldwork.fluids) {
      if (fluidKind(stated) !== 'glycol of unknown kind') continue
      yield {
        place: settingPlace(['fluids', id, 'substance']),
        message: `\`${stated.substance}\` may be ethylene or propylene glycol`,
        cell: stated.substance ?? ''
      }
    }
  }
} as const satisfies Rule
