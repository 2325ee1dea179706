import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const invalidSetting = {
  code: 'invalid-setting',
  severity: 'error',
  summary: 'study.yaml gives a setting a value that it cannot have',
  why: 'The setting is ignored, so the report is made as if it were not there.',
  remedy: 'correct the value; an editor that reads the schema in the first line shows what is possible',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'title: T\nanalysis: {confidence: 95}\n'},
      findings: ['study.yaml:2:24: `analysis.confidence` is `95`; it must be a number from 0.5 to 0.999']
    }
  ],
  check: (study) => problemsOf(study, 'invalid-setting')
} as const satisfies Rule
