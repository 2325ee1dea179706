import {isoMoment} from '../model/day.ts'
import type {Rule} from './rule.ts'

export const visitWithoutOpeningDate = {
  code: 'visit-without-opening-date',
  severity: 'caution',
  summary: 'nobody knows when a trap was opened',
  why: 'Its nights cannot be counted, so its catch stays on the species lists but outside the effort: in no rate, no diversity, no test.',
  remedy: 'fill `opened` from the field notes, if they say',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'visits.csv': 'trap_id,opened,collected,sample\nW1-1,,2026-05-18,sorted\n'},
      findings: ['visits.csv:2:6: trap W1-1, collected on 2026-05-18, has no opening date']
    }
  ],
  *check({exposures, effortBySite}, index) {
    if (effortBySite) return
    for (const {row, trapId, opened, collected} of exposures) {
      if (opened !== undefined) continue
      yield {
        place: index.place('visits', row, 'opened'),
        message: `trap ${trapId}, collected on ${isoMoment(collected)}, has no opening date`
      }
    }
  }
} as const satisfies Rule
