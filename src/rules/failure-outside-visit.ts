import {daysBetween, isoMoment} from '../model/day.ts'
import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

export const failureOutsideVisit = {
  code: 'failure-outside-visit',
  severity: 'error',
  summary: 'a trap is said to have failed outside the nights of its visit',
  why: 'Effort is credited until the failure; a date outside the visit would credit too much or less than nothing.',
  remedy: 'correct `failed_on`, or leave it empty where the day is not known',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,condition,failed_on,sample\nW1-1,2026-05-04,2026-05-18,overflowed,2026-05-28,sorted\n'
      },
      findings: ['visits.csv:2:39: failed on 2026-05-28, outside the visit from 2026-05-04 to 2026-05-18']
    }
  ],
  *check({exposures}, index) {
    for (const exposure of exposures) {
      const {opened, collected, failedOn} = exposure
      if (opened === undefined || failedOn === undefined) continue
      if (daysBetween(opened, failedOn) >= 0 && daysBetween(failedOn, collected) >= 0) continue
      yield {
        place: index.place('visits', exposure.row, 'failed_on'),
        message: `failed on ${isoMoment(failedOn)}, outside the visit from ${isoMoment(opened)} to ${isoMoment(collected)}`,
        setsAside: [reference('visits', exposure)]
      }
    }
  }
} as const satisfies Rule
