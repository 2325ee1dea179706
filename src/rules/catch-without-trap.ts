import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

export const catchWithoutTrap = {
  code: 'catch-without-trap',
  severity: 'error',
  settled: true,
  summary: 'a catch row names neither a trap with a day nor a site with a round',
  why: 'Such a catch cannot be put beside any effort, and not even on the list of a site.',
  remedy:
    'fill `trap_id` and `collected`, in every row (merged cells leave blanks below the first); for a catch pooled in the field, `site_id` and `round`',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'catch.csv': 'trap_id,collected,taxon,count\n,2026-05-18,Carabus problematicus,3\n'},
      findings: [
        'catch.csv:2:1: this row names neither a trap and its day of collection nor a site and round'
      ]
    }
  ],
  *check({catch: records}, index) {
    // The rows of a wide table are several records each.
    let last = -1
    for (const record of records) {
      const fromTrap = record.trapId !== undefined && record.collected !== undefined
      const pooled = record.trapId === undefined && record.siteId !== undefined && record.round !== undefined
      if (fromTrap || pooled || record.row === last) continue
      last = record.row
      yield {
        place: index.place('catch', record.row, record.trapId === undefined ? 'trap_id' : 'collected'),
        message: 'this row names neither a trap and its day of collection nor a site and round',
        setsAside: [reference('catch', record)]
      }
    }
  }
} as const satisfies Rule
