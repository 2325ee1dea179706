import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const unknownWord = {
  code: 'unknown-word',
  severity: 'caution',
  summary: 'a cell holds a word that its column does not know',
  why: 'The word is left out; where numbers depend on it, the row is set aside.',
  remedy: 'use one of the known words, or translate yours under `words:` in study.yaml',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv': 'trap_id,opened,collected,condition,sample\nW1-1,2026-05-04,2026-05-18,intact,sortd\n'
      },
      findings: ['visits.csv:2:35: `sortd` is not a word for sample; known are sorted, empty, unsorted, lost']
    }
  ],
  check: (study) => problemsOf(study, 'unknown-word')
} as const satisfies Rule
