import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const cellsDisagree = {
  code: 'cells-disagree',
  severity: 'note',
  summary: 'lines of one file that describe the same site, trap or taxon do not agree',
  why: 'The cell is left empty for that site, trap or taxon: either value would be a guess.',
  remedy: 'correct the lines, or keep a table of its own for sites or traps',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml': 'title: T\nfiles: {traps: sites.csv}\n',
        'sites.csv': 'site_id,habitat,soil,trap_id\nW1,wood,loam,W1-1\nW1,wood,sand,W1-2\nM1,wood,loam,M1-1\n'
      },
      findings: ['sites.csv: `soil` differs between lines of the same site (1 of 2); it is left empty there']
    }
  ],
  check: (study) => problemsOf(study, 'cells-disagree')
} as const satisfies Rule
