import type {Rule} from './rule.ts'

export const vertebratesNotRecorded = {
  code: 'vertebrates-not-recorded',
  severity: 'note',
  summary: 'visits.csv has no column for vertebrates caught by accident',
  why: 'Wet pitfall traps drown shrews, mice, frogs and lizards; those who give permits ask how many, and a missing number is no zero.',
  remedy:
    'add `vertebrates_count` to visits.csv, with 0 where there was none, and `vertebrates_what` and `vertebrates_fate`',
  source: 'Thompson & Thompson 2008: 0.4 to 15.6 vertebrates per 1,000 trap-nights',
  examples: [
    {files: {}, findings: []},
    {
      files: {'visits.csv': 'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-18,sorted\n'},
      findings: ['visits.csv: there is no column `vertebrates_count`']
    }
  ],
  *check({tables: {visits}}) {
    if (visits === undefined || visits.rowsRead === 0) return
    if (visits.columns.has('vertebrates_count') || visits.columns.has('vertebrates_what')) return
    yield {place: {file: visits.file}, message: 'there is no column `vertebrates_count`'}
  }
} as const satisfies Rule
