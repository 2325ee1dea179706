import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const ambiguousDate = {
  code: 'ambiguous-date',
  severity: 'error',
  summary: 'a date can be read in two ways',
  why: 'The wrong reading would move the row to another month and change effort and season.',
  remedy: 'say `dates: dmy` or `dates: mdy` in study.yaml, or write dates as 2026-05-31',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv': 'trap_id,opened,collected,condition,sample\nW1-1,04/05/2026,2026-05-18,intact,sorted\n'
      },
      findings: ['visits.csv:2:6: `04/05/2026` may be 2026-05-04 or 2026-04-05']
    }
  ],
  check: (study) => problemsOf(study, 'ambiguous-date')
} as const satisfies Rule
