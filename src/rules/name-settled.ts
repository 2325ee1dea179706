import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const nameSettled = {
  code: 'name-settled',
  severity: 'note',
  summary: 'a name of the catch is written otherwise than in taxa.csv',
  why: 'It is read as the name in taxa.csv; if it is another animal, the two are counted as one.',
  remedy: 'nothing, if it is the same animal; else add the name to taxa.csv',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,carabus Problematicus,3\nW1-1,2026-06-01,Abax parallelepipedus,2\n'
      },
      findings: ['catch.csv:2:17: `carabus Problematicus` is read as `Carabus problematicus` (1 row)']
    }
  ],
  check: (study) => problemsOf(study, 'name-settled')
} as const satisfies Rule
