import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const countNotWhole = {
  code: 'count-not-whole',
  severity: 'error',
  summary: 'a count is not a whole number of individuals',
  why: 'Diversity and completeness need whole numbers, and nobody can add up `12*` or `c. 30`, so the row is left out of every number.',
  remedy: 'write the number that was counted; say doubts in `remarks`',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,12*\n'},
      findings: ['catch.csv:2:39: `12*` is not a whole number of individuals']
    }
  ],
  check: (study) => problemsOf(study, 'count-not-whole')
} as const satisfies Rule
