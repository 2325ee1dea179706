import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const unreadableNumber = {
  code: 'unreadable-number',
  severity: 'caution',
  summary: 'a cell that should hold a number does not',
  why: 'The value is left out; where numbers depend on it, the row is set aside.',
  remedy: 'write plain digits, with one decimal mark',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'sites.csv': 'site_id,habitat,elevation_m\nW1,wood,about 200\nM1,meadow,180\n'},
      findings: ['sites.csv:2:9: `about 200` is not a number']
    }
  ],
  check: (study) => problemsOf(study, 'unreadable-number')
} as const satisfies Rule
