import {isoMoment} from '../model/day.ts'
import {formatPlace} from '../model/place.ts'
import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

/** In a wide table the row may be there, with nothing but blanks in it. */
const whereBlanksAre =
  'if its row in the wide catch table is all blanks, say what blanks mean (`catch: {blanks: zero}`); else write `empty`, `unsorted` or `lost` in `sample`'

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
  *check({exposures, settings, problems, tables}, index) {
    if (settings.no_catch_rows !== undefined) return
    const blanks = problems.some(({code}) => code === 'blank-cells')
    const firstUnread = problems.find(
      ({table, code, setsAside}) => table === 'catch' && setsAside && code !== 'totals-row'
    )?.place
    const unreadRow = (trapId: string) => {
      const {columns, unusableIds} = tables.catch ?? {}
      if (columns?.has('trap_id') !== true) return firstUnread
      const unusable = unusableIds?.get(trapId)
      return unusable === undefined ? undefined : index.place('catch', unusable)
    }
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
      const unread = allAside ? undefined : unreadRow(trapId)
      const isSorted = sample === 'sorted' && !allAside
      const trap = `trap ${trapId}, opened on ${isoMoment(opened)},`
      const rows = unread === undefined ? 'no catch rows' : 'no catch rows that can be read'
      const message = isSorted
        ? `${trap} is said to be sorted but has ${rows}`
        : `${trap} has ${rows} and no word in \`sample\``
      const remedy = allAside
        ? 'mend the catch rows that are set aside'
        : unread !== undefined
          ? `a catch row that may belong to it could not be read (${formatPlace(unread)}): mend that first`
          : blanks
            ? whereBlanksAre
            : isSorted
              ? 'write `empty` if nothing was in it; else enter its catch'
              : undefined
      yield {
        place: index.place('visits', row, isSorted ? 'sample' : 'opened'),
        message: allAside ? `all catch rows of ${trap} are set aside, so its catch is not known` : message,
        ...(remedy !== undefined && {remedy}),
        setsAside: [reference('visits', exposure)]
      }
    }
  }
} as const satisfies Rule
