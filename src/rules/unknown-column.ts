import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const unknownColumn = {
  code: 'unknown-column',
  severity: 'note',
  summary: 'a column has a header that means nothing to pitfolio',
  why: 'The column is kept in the archive and used for nothing: if it holds counts or dates, the report lacks them.',
  remedy: 'rename the header, name it under `columns:` in study.yaml, or leave it as it is',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'sites.csv': 'site_id,habitat,lattitude\nW1,wood,51.2\nM1,meadow,51.3\n'},
      findings: ['sites.csv:1:17: `lattitude` is not a column of sites.csv; it is used for nothing']
    }
  ],
  check: (study) => problemsOf(study, 'unknown-column')
} as const satisfies Rule
