import type {Exposure} from '../model/study.ts'
import type {Rule} from './rule.ts'
import {sameCells} from './same-cells.ts'
import {reference} from './study-index.ts'

export const duplicateVisit = {
  code: 'duplicate-visit',
  severity: 'error',
  summary: 'a visit stands twice in the table, word for word',
  why: 'The exposure would be counted twice and every rate of its trap halved.',
  remedy: 'delete one of the two rows',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-18,sorted\nW1-1,2026-05-18,2026-06-01,sorted\nW1-1,2026-05-04,2026-05-18,sorted\nM1-1,2026-05-04,2026-05-18,empty\n'
      },
      findings: [
        'visits.csv:4:1: this visit of trap W1-1 stands here again, word for word; this row is not used'
      ]
    }
  ],
  *check(_study, index) {
    for (const [trapId, exposures] of index.exposuresOfTrap) {
      const kept: Exposure[] = []
      for (const exposure of [...exposures].sort((a, b) => a.row - b.row)) {
        const earlier = kept.find(
          (other) => other.collected.day === exposure.collected.day && sameCells(other, exposure)
        )
        if (earlier === undefined) {
          kept.push(exposure)
          continue
        }
        yield {
          place: index.place('visits', exposure.row, 'trap_id'),
          message: `this visit of trap ${trapId} stands here again, word for word; this row is not used`,
          related: [{place: index.place('visits', earlier.row), message: 'first here'}],
          setsAside: [reference('visits', exposure)]
        }
      }
    }
  }
} as const satisfies Rule
