import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const unknownCondition = {
  code: 'unknown-condition',
  severity: 'error',
  summary: 'the state of a trap is described by a word that has no meaning yet',
  why: 'Effort is credited by the state in which the trap was found; without it the visit cannot count.',
  remedy:
    'use one of the known words, say in study.yaml what yours means (`words: {condition: {ok: intact}}`), or give it a credit of its own under `conditions:`',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv': 'trap_id,opened,collected,condition,sample\nW1-1,2026-05-04,2026-05-18,flooded,sorted\n'
      },
      findings: [
        'visits.csv:2:28: `flooded` is not a word for condition; known are intact, diluted, overflowed, dry, raised, disturbed, blocked, spilled, missing, closed'
      ]
    }
  ],
  check: (study) => problemsOf(study, 'unknown-condition')
} as const satisfies Rule
