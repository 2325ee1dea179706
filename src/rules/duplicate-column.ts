import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const duplicateColumn = {
  code: 'duplicate-column',
  severity: 'caution',
  summary: 'two columns of a table have the same header',
  why: 'Only the first is read: numbers in the second are missing from the report.',
  remedy: 'rename one of the two columns',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv': 'trap_id,collected,taxon,count,Count\nW1-1,2026-05-18,Carabus problematicus,3,4\n'
      },
      findings: ['catch.csv:1:31: `Count` stands twice in the header; the first, column 4, is read']
    }
  ],
  check: (study) => problemsOf(study, 'duplicate-column')
} as const satisfies Rule
