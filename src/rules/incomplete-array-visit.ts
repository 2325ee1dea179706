import {failedExposure} from './failed-exposure.ts'
import {grouped} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

const leastShare = 0.7
/** Of one or two traps the loss of one is no more than that. */
const fewestTraps = 3

export const incompleteArrayVisit = {
  code: 'incomplete-array-visit',
  severity: 'note',
  summary: 'fewer than seven in ten traps of a site were usable in a round',
  why: 'The few traps that are left stand for the whole site, in what was often a special week: a flood, a drought, a herd of cattle.',
  remedy:
    'nothing in the records, if they are right; say in `limitations` that the round was kept, or that you compared without it',
  source:
    'at least 7 traps of 10 usable, else the place is trapped again or left out: CAP LTER protocol 2016',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,condition,sample\nW1-1,2026-05-04,2026-05-18,intact,sorted\nW1-2,2026-05-04,2026-05-18,overflowed,empty\nW1-3,2026-05-04,2026-05-18,missing,\n'
      },
      findings: ['visits.csv:3:28: at site W1 1 of 3 traps was usable in round 2026-05-18']
    }
  ],
  *check({settings}, index) {
    for (const [siteId, visits] of grouped(index.fieldwork.visits, ({at}) => at.site.siteId)) {
      const poor = [...grouped(visits, ({round}) => round)].flatMap(([round, ofRound]) => {
        const failed = ofRound.filter(({exposure}) => failedExposure(exposure, settings))
        const usable = ofRound.length - failed.length
        return ofRound.length < fewestTraps || usable >= leastShare * ofRound.length
          ? []
          : [{round, first: failed[0]!, usable, all: ofRound.length}]
      })
      const [first] = poor
      if (first === undefined) continue
      const further = poor.length === 1 ? '' : `; ${numberOf(poor.length - 1, 'round')} more like that`
      yield {
        place: index.place('visits', first.first.exposure.row, 'condition'),
        message: `at site ${siteId} ${first.usable} of ${numberOf(first.all, 'trap')} ${first.usable === 1 ? 'was' : 'were'} usable in round ${first.round}${further}`
      }
    }
  }
} as const satisfies Rule
