import {isoMoment} from '../model/day.ts'
import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

export const visitWithoutCatchRecord = {
  code: 'visit-without-catch-record',
  severity: 'error',
  summary: 'nothing says what became of a visit: no catch rows and no word in `sample`',
  why: 'An empty trap and a forgotten vial look alike here; counting one as the other would lower or raise every rate.',
  remedy:
    'write `empty`, `unsorted` or `lost` in `sample`, or say once in study.yaml what silence means (`no_catch_rows`)',
  source:
    "the study folder's own logic; zero and lost must never look alike (pitfall-methods, common practice, no source)",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv': 'trap_id,opened,collected\nW1-1,2026-05-04,2026-05-18\nM1-1,2026-05-04,2026-05-18\n'
      },
      findings: ['visits.csv:3:6: trap M1-1, opened on 2026-05-04, has no catch rows and no word in `sample`']
    }
  ],
  *check({exposures, settings}, index) {
    if (settings.no_catch_rows !== undefined) return
    const pooled = new Set(
      index.matching.pooled.flatMap(({exposures: together}) => together.map(({row}) => row))
    )
    for (const exposure of exposures) {
      const {row, trapId, opened, sample, condition} = exposure
      if (sample !== undefined && sample !== 'sorted') continue
      if (
        opened === undefined ||
        ['missing', 'spilled', 'closed'].includes(condition) ||
        index.isAside('visits', row)
      )
        continue
      const records = index.matching.ofExposure.get(row) ?? []
      if (pooled.has(row) || records.some((record) => !index.isAside('catch', record.row))) continue
      const allAside = records.length > 0
      if (sample === 'sorted' && !allAside) {
        yield {
          place: index.place('visits', row, 'sample'),
          message: `trap ${trapId}, opened on ${isoMoment(opened)}, is said to be sorted but has no catch rows`,
          remedy: 'write `empty` if nothing was in it; else enter its catch',
          setsAside: [reference('visits', exposure)]
        }
        continue
      }
      yield {
        place: index.place('visits', row, 'opened'),
        message: allAside
          ? `all catch rows of trap ${trapId}, opened on ${isoMoment(opened)}, are set aside, so its catch is not known`
          : `trap ${trapId}, opened on ${isoMoment(opened)}, has no catch rows and no word in \`sample\``,
        ...(allAside && {remedy: 'mend the catch rows that are set aside'}),
        setsAside: [reference('visits', exposure)]
      }
    }
  }
} as const satisfies Rule
