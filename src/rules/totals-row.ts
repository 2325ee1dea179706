import type {Rule} from './rule.ts'

export const totalsRow = {
  code: 'totals-row',
  severity: 'note',
  summary: 'a table has a row of sums',
  why: 'A sum that is read as a record would count every animal twice, so it is left out.',
  remedy: 'nothing, if it is a row of sums; else give the row another name',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\nTotal,,,3\n'
      },
      findings: ['catch.csv:3:1: this row holds sums (`Total`), not records; it is not used']
    }
  ],
  *check({problems}) {
    for (const {code, place, message, cell, table, row} of problems)
      if (code === 'totals-row' && table !== undefined && row !== undefined)
        yield {place, message, ...(cell !== undefined && {cell}), setsAside: [{table, row}]}
  }
} as const satisfies Rule
