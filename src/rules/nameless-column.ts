import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const namelessColumn = {
  code: 'nameless-column',
  severity: 'note',
  summary: 'cells stand below an empty header',
  why: 'Nobody can tell what they are. In a wide catch table they are counts of something: without them the collection would be an undercount, so it is set aside.',
  remedy: 'write a name above the column, or delete the column if it means nothing',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': ',trap_id,site_id\n1,W1-1,W1\n2,M1-1,M1\n'},
      findings: ['traps.csv:2:1: column 1 has no header; its 2 cells are used for nothing']
    },
    {
      files: {
        'catch.csv':
          'trap_id,collected,Carabus problematicus,,Abax parallelepipedus\nW1-1,2026-05-18,3,8,1\nM1-1,2026-05-18,1,,2\n'
      },
      findings: ['catch.csv:2:19: column 4 has no header, so nobody can tell what was counted here']
    }
  ],
  check: (study) => problemsOf(study, 'nameless-column')
} as const satisfies Rule
