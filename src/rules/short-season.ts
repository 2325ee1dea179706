import {nightsOpen} from './nights-open.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

const fewestDays = 20

export const shortSeason = {
  code: 'short-season',
  severity: 'caution',
  summary: 'traps stood open on fewer than 20 days',
  why: 'Every kind has its own weeks: a short season shows a part of the kinds, and scarce ones are missed.',
  remedy: 'say it in `limitations`; next time trap for 20 days at least, in early and in late summer',
  source: 'samples of 20 days or more adequate for many questions: Niemela et al. 1990',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-18,sorted\nM1-1,2026-05-04,2026-05-18,empty\n'
      },
      findings: ['visits.csv: traps stood open on 14 days; 20 are adequate for many questions']
    }
  ],
  *check({tables}, index) {
    const {visits} = index.fieldwork
    if (visits.length === 0) return
    const days = nightsOpen(visits, 1)(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)
    if (days >= fewestDays) return
    yield {
      place: {file: tables.visits?.file ?? 'visits.csv'},
      message: `traps stood open on ${numberOf(days, 'day')}; ${fewestDays} are adequate for many questions`
    }
  }
} as const satisfies Rule
