import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const ambiguousNumber = {
  code: 'ambiguous-number',
  severity: 'caution',
  summary: 'a number can be read in two ways',
  why: 'One reading is a thousand times the other.',
  remedy: 'say `decimal: point` or `decimal: comma` in study.yaml',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,1.234\n'},
      findings: ['catch.csv:2:39: `1.234` may be 1.234 or 1234']
    }
  ],
  check: (study) => problemsOf(study, 'ambiguous-number')
} as const satisfies Rule
