import {isoDay, isoMoment} from '../model/day.ts'
import {formatPlace} from '../model/place.ts'
import type {CatchRecord, Study} from '../model/study.ts'
import type {Rule} from './rule.ts'
import {reference, type StudyIndex} from './study-index.ts'

export const catchWithoutVisit = {
  code: 'catch-without-visit',
  severity: 'error',
  summary: 'a catch is dated on no visit of its trap',
  why: 'A catch without a visit has no effort, so it can stand in no rate; and the visit that it belongs to looks empty.',
  remedy: 'correct the date in catch.csv, or add the visit to visits.csv',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-19,Carabus problematicus,3\n'},
      findings: ['catch.csv:2:6: trap W1-1 has no visit collected on 2026-05-19']
    },
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-19,Carabus problematicus,3\nW1-1,2026-05-19,Abax parallelepipedus,2\n'
      },
      findings: ['catch.csv:2:6: trap W1-1 has no visit collected on 2026-05-19 (2 rows)']
    }
  ],
  *check(study, index) {
    for (const records of collections(index)) {
      const [first] = records as readonly [CatchRecord, ...CatchRecord[]]
      const {trapId, collected} = first
      const rows = new Set(records.map(({row}) => row))
      const missing =
        trapId === undefined || collected === undefined
          ? `site ${first.siteId} has no visit in round ${first.round}`
          : `trap ${trapId} has no visit collected on ${isoMoment(collected)}`
      yield {
        place: index.place('catch', first.row, trapId === undefined ? 'round' : 'collected'),
        message: rows.size === 1 ? missing : `${missing} (${rows.size} rows)`,
        ...whereToLook(first, study, index),
        setsAside: records.map((record) => reference('catch', record))
      }
    }
  }
} as const satisfies Rule

/** Unmatched rows of one trap and moment, or of one site and round, belong together: one date was wrong for all of them. */
function collections(index: StudyIndex): Iterable<readonly CatchRecord[]> {
  const byCollection = new Map<string, CatchRecord[]>()
  for (const record of index.matching.unmatched) {
    const {trapId, siteId, round, collected} = record
    if (index.isAside('catch', record.row) || (trapId !== undefined && collected === undefined)) continue
    const key =
      trapId === undefined
        ? `${siteId}\u0000${round}`
        : `${trapId}\u0000${collected?.day} ${collected?.minutes}`
    const together = byCollection.get(key)
    if (together) together.push(record)
    else byCollection.set(key, [record])
  }
  return byCollection.values()
}

/** A visit that could not be read, or the trap's visit nearest in time, for a date that is a day or a digit off. */
function whereToLook({trapId, collected}: CatchRecord, study: Study, index: StudyIndex): {remedy?: string} {
  if (trapId === undefined || collected === undefined)
    return {remedy: 'correct site and round in catch.csv, or fill `round` in visits.csv'}
  const unread = study.tables.visits?.unusableIds.get(trapId)
  if (unread !== undefined) {
    const at = formatPlace(index.place('visits', unread))
    return {remedy: `a visit of trap ${trapId} could not be read (${at}): mend that first`}
  }
  const days = (index.exposuresOfTrap.get(trapId) ?? []).map((exposure) => exposure.collected.day)
  if (days.length === 0) return {remedy: `trap ${trapId} has no visit at all in visits.csv: add its visits`}
  const nearest = days.reduce((best, day) =>
    Math.abs(day - collected.day) < Math.abs(best - collected.day) ? day : best
  )
  return {
    remedy: `its nearest visit was collected on ${isoDay(nearest)}; correct the date, or add the visit to visits.csv`
  }
}
