import {isoDay, isoMoment} from '../model/day.ts'
import type {CatchRecord} from '../model/study.ts'
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
    }
  ],
  *check(_study, index) {
    for (const record of index.matching.unmatched) {
      if (index.isAside('catch', record.row)) continue
      const {trapId, collected} = record
      if (trapId !== undefined && collected === undefined) continue
      yield {
        place: index.place('catch', record.row, trapId === undefined ? 'round' : 'collected'),
        message:
          trapId === undefined || collected === undefined
            ? `site ${record.siteId} has no visit in round ${record.round}`
            : `trap ${trapId} has no visit collected on ${isoMoment(collected)}`,
        ...nearestVisit(record, index),
        setsAside: [reference('catch', record)]
      }
    }
  }
} as const satisfies Rule

/** The trap's visit nearest in time, for a date that is a day or a digit off. */
function nearestVisit({trapId, collected}: CatchRecord, index: StudyIndex): {remedy?: string} {
  if (trapId === undefined || collected === undefined) return {}
  const days = (index.exposuresOfTrap.get(trapId) ?? []).map((exposure) => exposure.collected.day)
  if (days.length === 0) return {remedy: `trap ${trapId} has no visit at all in visits.csv: add its visits`}
  const nearest = days.reduce((best, day) => (Math.abs(day - collected.day) < Math.abs(best - collected.day) ? day : best))
  return {remedy: `its nearest visit was collected on ${isoDay(nearest)}; correct the date, or add the visit to visits.csv`}
}
