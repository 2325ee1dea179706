import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const cellsDisagree = {
  code: 'cells-disagree',
  severity: 'note',
  summary: 'lines of one file that describe the same site, trap or taxon do not agree',
  why: 'The cell is left empty for that site, trap or taxon: either value would be a guess.',
  remedy: 'correct the lines, or keep a table of its own for sites or traps',
  source: "the study folder's own logic",
  examples: [{files: {}, findings: []}],
  check: (study) => problemsOf(study, 'cells-disagree')
} as const satisfies Rule
