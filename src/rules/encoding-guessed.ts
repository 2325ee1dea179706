import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const encodingGuessed = {
  code: 'encoding-guessed',
  severity: 'note',
  summary: 'a file is not UTF-8 and was read as Windows-1252',
  why: 'Accented letters may come out wrong, and a name spelled with them is then another name.',
  remedy: 'save the file as UTF-8, or say `encoding:` in study.yaml',
  source: "the study folder's own logic",
  examples: [{files: {}, findings: []}],
  check: (study) => problemsOf(study, 'encoding-guessed')
} as const satisfies Rule
