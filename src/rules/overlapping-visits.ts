import {daysBetween, isoMoment} from '../model/day.ts'
import type {Exposure} from '../model/study.ts'
import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

export const overlappingVisits = {
  code: 'overlapping-visits',
  severity: 'error',
  summary: 'two visits of one trap cover the same nights, or were collected on one day',
  why: 'A trap cannot be open twice at once: the nights would be counted double, and it is open to which visit the catch belongs.',
  remedy:
    'correct the dates; where a trap really was collected twice on one day, give both visits their times',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-18,sorted\nW1-1,2026-05-11,2026-06-01,sorted\n'
      },
      findings: [
        'visits.csv:3:6: trap W1-1 was opened on 2026-05-11 while it stood open until 2026-05-18; neither visit is used'
      ]
    }
  ],
  *check(_study, index) {
    for (const [trapId, all] of index.exposuresOfTrap) {
      const exposures = all.filter(({row, opened}) => opened !== undefined && !index.isAside('visits', row))
      let longest: Exposure | undefined
      for (const exposure of exposures) {
        if (longest !== undefined && overlap(longest, exposure)) {
          const together = longest.collected.day === exposure.collected.day
          yield {
            place: index.place('visits', exposure.row, 'opened'),
            message: together
              ? `trap ${trapId} was collected twice on ${isoMoment(exposure.collected)}; neither visit is used`
              : `trap ${trapId} was opened on ${openedText(exposure)} while it stood open until ${isoMoment(longest.collected)}; neither visit is used`,
            related: [{place: index.place('visits', longest.row), message: 'the other visit'}],
            setsAside: [reference('visits', longest), reference('visits', exposure)]
          }
        }
        if (longest === undefined || daysBetween(longest.collected, exposure.collected) > 0)
          longest = exposure
      }
    }
  }
} as const satisfies Rule

/** Emptied and reopened on the same day is the usual thing, not an overlap; two collections on a day need their times. */
function overlap(earlier: Exposure, later: Exposure): boolean {
  if (later.opened === undefined) return false
  if (daysBetween(later.opened, earlier.collected) > 0) return true
  const timed = earlier.collected.minutes !== undefined && later.collected.minutes !== undefined
  return earlier.collected.day === later.collected.day && !timed
}

function openedText({opened}: Exposure): string {
  return opened === undefined ? 'an unknown day' : isoMoment(opened)
}
