import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const unreadableDate = {
  code: 'unreadable-date',
  severity: 'caution',
  summary: 'a cell that should hold a date does not',
  why: 'Without the date the row cannot be placed in the season.',
  remedy: 'write the day as 2026-05-31',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv': 'trap_id,opened,collected,condition,sample\nW1-1,2026-05-04,2026-05-38,intact,sorted\n'
      },
      findings: ['visits.csv:2:17: `2026-05-38` is not a date']
    }
  ],
  check: (study) => problemsOf(study, 'unreadable-date')
} as const satisfies Rule
