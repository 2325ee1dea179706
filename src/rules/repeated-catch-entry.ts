import type {CatchRecord} from '../model/study.ts'
import {catchKey, nameBesidePlace} from './catch-key.ts'
import {whence} from './duplicate-catch-row.ts'
import type {Found, Rule} from './rule.ts'
import type {StudyIndex} from './study-index.ts'

export const repeatedCatchEntry = {
  code: 'repeated-catch-entry',
  severity: 'caution',
  summary: 'one taxon of one collection is counted in two rows',
  why: 'The counts are added up, which is right for two vials and wrong for a correction that forgot its first entry.',
  remedy: 'if both are right, tell them apart in `vial`; if one replaces the other, delete the old one',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\nW1-1,2026-05-18,Carabus problematicus,5\n'
      },
      findings: [
        'catch.csv:3:17: Carabus problematicus of trap W1-1 on 2026-05-18 has 3 above and 5 here; they are added up'
      ]
    }
  ],
  *check(_study, index) {
    for (const records of index.collectionsWithRepeats) yield* repeatsIn(records, index)
  }
} as const satisfies Rule

function* repeatsIn(records: readonly CatchRecord[], index: StudyIndex): Iterable<Found> {
  const first = new Map<string, CatchRecord>()
  for (const record of records) {
    if (index.isAside('catch', record.row)) continue
    const key = catchKey(record)
    const earlier = first.get(key)
    if (earlier === undefined) {
      first.set(key, record)
      continue
    }
    yield {
      place: index.place('catch', record.row, 'taxon'),
      message: `${nameBesidePlace(record.taxon, index.taxa)} of ${whence(record)} has ${earlier.count} above and ${record.count} here; they are added up`,
      related: [{place: index.place('catch', earlier.row), message: 'first here'}]
    }
  }
}
