import {isoMoment} from '../model/day.ts'
import type {CatchRecord} from '../model/study.ts'
import {catchKey, nameBesidePlace} from './catch-key.ts'
import {grouped} from './fieldwork.ts'
import type {Found, Rule} from './rule.ts'
import {sameCells} from './same-cells.ts'
import {reference, type StudyIndex} from './study-index.ts'

export const duplicateCatchRow = {
  code: 'duplicate-catch-row',
  severity: 'error',
  summary: 'a catch row stands twice, identical in all cells',
  why: 'The same animals would be counted twice.',
  remedy: 'delete one of the two rows; if they are two vials, give each its label in `vial`',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\nW1-1,2026-05-18,Carabus problematicus,3\n'
      },
      findings: [
        'catch.csv:3:17: Carabus problematicus of trap W1-1 on 2026-05-18 stands here again, word for word; this row is not used'
      ]
    }
  ],
  *check(_study, index) {
    for (const records of index.collectionsWithRepeats) yield* duplicatesIn(records, index)
  }
} as const satisfies Rule

/** Once for each collection: what is pasted twice is seldom a single row. */
function* duplicatesIn(records: readonly CatchRecord[], index: StudyIndex): Iterable<Found> {
  const kept = new Map<string, CatchRecord[]>()
  const again: {record: CatchRecord; earlier: CatchRecord}[] = []
  for (const record of records) {
    const key = catchKey(record)
    const alike = kept.get(key)
    if (alike === undefined) {
      kept.set(key, [record])
      continue
    }
    const earlier = alike.find((other) => other.count === record.count && sameCells(other, record))
    if (earlier === undefined) alike.push(record)
    else again.push({record, earlier})
  }
  for (const [where, rows] of grouped(again, ({record}) => whence(record))) {
    const {record, earlier} = rows[0]!
    yield {
      place: index.place('catch', record.row, 'taxon'),
      message:
        rows.length === 1
          ? `${nameBesidePlace(record.taxon, index.taxa)} of ${where} stands here again, word for word; this row is not used`
          : `${rows.length} rows of ${where} stand here again, word for word; these rows are not used`,
      related: [{place: index.place('catch', earlier.row), message: 'first here'}],
      setsAside: rows.map((one) => reference('catch', one.record))
    }
  }
}

export function whence({trapId, siteId, round, collected}: CatchRecord): string {
  const when = collected === undefined ? `in round ${round}` : `on ${isoMoment(collected)}`
  return trapId === undefined ? `site ${siteId} ${when}` : `trap ${trapId} ${when}`
}
