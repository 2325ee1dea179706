import {failedExposure} from './failed-exposure.ts'
import {fewOf} from './few-of.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

export const rimNotFlush = {
  code: 'rim-not-flush',
  severity: 'caution',
  summary: 'the rim stood proud of the soil, or sunken, and the visit counts in full',
  why: 'A proud rim is walked round: its catch is too low for its nights. A sunken one takes soil and rain; its catch is little affected.',
  remedy:
    'write `raised` as the condition of a visit with a proud rim, so that its nights count in part; a sunken rim needs nothing',
  source:
    'a proud rim is walked round: CAP LTER schools page; sunken to 5 cm without effect on catch: Hammond et al. 2018',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,condition,sample,rim\nW1-1,2026-05-04,2026-05-18,intact,sorted,proud\nM1-1,2026-05-04,2026-05-18,raised,empty,proud\n'
      },
      findings: ['visits.csv:2:42: the rim stood proud at 1 visit that counts in full: W1-1']
    },
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,condition,sample,rim\nW1-1,2026-05-04,2026-05-18,intact,sorted,sunken\n'
      },
      findings: ['visits.csv:2:42: the rim stood sunken at 1 visit: W1-1']
    }
  ],
  *check({settings}, index) {
    const counting = index.fieldwork.visits.filter(({exposure}) => !failedExposure(exposure, settings))
    for (const rim of ['proud', 'sunken'] as const) {
      const visits = counting.filter(({exposure}) => exposure.rim === rim)
      const [first] = visits
      if (first === undefined) continue
      const traps = [...new Set(visits.map(({exposure}) => exposure.trapId))]
      const inFull = rim === 'sunken' ? '' : ` that ${visits.length === 1 ? 'counts' : 'count'} in full`
      yield {
        place: index.place('visits', first.exposure.row, 'rim'),
        message: `the rim stood ${rim} at ${numberOf(visits.length, 'visit')}${inFull}: ${fewOf(traps)}`,
        severity: rim === 'proud' ? 'caution' : 'note'
      }
    }
  }
} as const satisfies Rule
