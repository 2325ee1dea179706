import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const blankCells = {
  code: 'blank-cells',
  severity: 'caution',
  summary: 'a wide catch table has empty cells, and nothing says what they mean',
  why: 'Taken as none they lower every rate; taken as not recorded they are no catch record. As long as nothing is said, no animal is counted for them and an all-empty row is no record.',
  remedy: 'say `catch: {blanks: zero}` or `catch: {blanks: unknown}` in study.yaml',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,Carabus problematicus,Abax parallelepipedus\nW1-1,2026-05-18,3,\nW1-1,2026-06-01,,2\n'
      },
      findings: ['catch.csv:2:19: 2 cells of taxa are empty, which may mean none or not recorded']
    }
  ],
  check: (study) => problemsOf(study, 'blank-cells')
} as const satisfies Rule
