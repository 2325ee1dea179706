import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const unknownSetting = {
  code: 'unknown-setting',
  severity: 'caution',
  summary: 'study.yaml has a setting that does not exist',
  why: 'It is ignored, so what it says is missing from the report.',
  remedy: 'correct the spelling, or take the line out',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'titel: T\n'},
      findings: ['study.yaml:1:1: `titel` is not a setting; it is ignored']
    }
  ],
  check: (study) => problemsOf(study, 'unknown-setting')
} as const satisfies Rule
