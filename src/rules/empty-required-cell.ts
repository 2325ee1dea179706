import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const emptyRequiredCell = {
  code: 'empty-required-cell',
  severity: 'error',
  summary: 'a cell that must be filled is empty',
  why: 'Without it the row belongs nowhere, so it is left out of every number.',
  remedy:
    'fill the cell from the field notes; where a cell stands for several rows (merged cells leave blanks below the first), write it in every row; delete a row that stands for nothing',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'trap_id,site_id\nW1-1,W1\nM1-1,\n'},
      findings: ['traps.csv:3:6: `site_id` is empty']
    }
  ],
  check: (study) => problemsOf(study, 'empty-required-cell')
} as const satisfies Rule
