import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const linesPassedOver = {
  code: 'lines-passed-over',
  severity: 'note',
  summary: 'a file has titles or comments among its rows',
  why: 'They are passed over; a row of data that looks like one would be missing.',
  remedy: 'nothing, if they are titles or comments; a comment starts with `#` and fills one cell',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'The traps of 2026\ntrap_id,site_id\n# two sites\nW1-1,W1\nM1-1,M1\n'},
      findings: ['traps.csv: 2 lines are titles or comments and were passed over']
    }
  ],
  check: (study) => problemsOf(study, 'lines-passed-over')
} as const satisfies Rule
