import {daysBetween, isoMoment} from '../model/day.ts'
import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

export const visitEndsBeforeItStarts = {
  code: 'visit-ends-before-it-starts',
  severity: 'error',
  settled: true,
  summary: 'a trap was collected before it was opened, or at the same time',
  why: 'The exposure has no nights, so its catch cannot be put in relation to any effort.',
  remedy: 'check both dates in the field notes',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'visits.csv': 'trap_id,opened,collected,sample\nW1-1,2026-05-18,2026-05-04,sorted\n'},
      findings: ['visits.csv:2:17: collected on 2026-05-04, but opened on 2026-05-18']
    },
    {
      files: {'visits.csv': 'trap_id,opened,collected,sample\nW1-1,2026-05-18,2026-05-18,sorted\n'},
      findings: ['visits.csv:2:17: opened and collected on 2026-05-18, which makes no night']
    }
  ],
  *check({exposures}, index) {
    for (const exposure of exposures) {
      const {opened, collected} = exposure
      if (opened === undefined || daysBetween(opened, collected) > 0) continue
      const same = daysBetween(opened, collected) === 0
      yield {
        place: index.place('visits', exposure.row, 'collected'),
        message: same
          ? `opened and collected on ${isoMoment(collected)}, which makes no night`
          : `collected on ${isoMoment(collected)}, but opened on ${isoMoment(opened)}`,
        setsAside: [reference('visits', exposure)]
      }
    }
  }
} as const satisfies Rule
