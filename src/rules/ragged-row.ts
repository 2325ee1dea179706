import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const raggedRow = {
  code: 'ragged-row',
  severity: 'error',
  summary: 'a row has more cells than the header',
  why: 'Cells may have moved into the wrong column, so nothing in the row can be trusted.',
  remedy:
    'look for a separator inside a cell (a decimal comma too) and put that cell in quotation marks; or give a column at the right its header',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3,x\n'},
      findings: ['catch.csv:2:1: this row has 5 cells, the header 4']
    }
  ],
  check: (study) => problemsOf(study, 'ragged-row')
} as const satisfies Rule
