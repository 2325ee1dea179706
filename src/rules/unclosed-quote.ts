import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const unclosedQuote = {
  code: 'unclosed-quote',
  severity: 'error',
  summary: 'a quotation mark is opened and not closed',
  why: 'Everything up to the next quotation mark would become one cell, so the line is set aside instead.',
  remedy: 'close the quotation mark, or remove it',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,"Carabus problematicus,3\nW1-1,2026-06-01,Abax parallelepipedus,2\n'
      },
      findings: ['catch.csv:2:1: a quotation mark opens in this line and is not closed properly']
    }
  ],
  check: (study) => problemsOf(study, 'unclosed-quote')
} as const satisfies Rule
