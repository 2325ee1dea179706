import type {Exposure, Site} from '../model/study.ts'
import {fewOf} from './few-of.ts'
import type {TrapAtWork} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Found, Rule} from './rule.ts'
import type {StudyIndex} from './study-index.ts'

export const trapsMissingFromRound = {
  code: 'traps-missing-from-round',
  severity: 'caution',
  summary: 'traps of a site have no visit in a round that others have',
  why: 'A trap that was lost, closed or forgotten leaves no trace, so the report cannot tell planned effort from achieved effort.',
  remedy:
    'add the visit, with `missing` or `closed` as its condition where that is so; fill `removed` in traps.csv for a trap that was taken out',
  source: "losses must be reported: Kotze, O'Hara & Lehvavirta 2012; common practice, no source for the rule",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,sample,round\nW1-1,2026-05-04,2026-05-18,sorted,R1\nW1-2,2026-05-04,2026-05-18,empty,R1\nW1-3,2026-05-04,2026-05-18,empty,R1\nM1-1,2026-05-04,2026-05-18,empty,R1\nM1-2,2026-05-04,2026-05-18,empty,R1\nM1-3,2026-05-04,2026-05-18,empty,R1\nM1-4,2026-05-04,2026-05-18,empty,R1\nM1-5,2026-05-04,2026-05-18,empty,R1\n'
      },
      findings: ['traps.csv:6:1: site W1 has no visit of 2 of its traps in round R1: W1-4 and W1-5']
    }
  ],
  *check({exposures, tables}, index) {
    const rounds = roundsOf(exposures)
    if (rounds === undefined) return
    const {trapsOfSite} = index.fieldwork
    const visited = (round: RoundVisits, {trap}: TrapAtWork) => round.traps.has(trap.trapId)
    for (const [, traps] of trapsOfSite) {
      const missing = rounds.flatMap((round) => {
        const others = traps.some((at) => visited(round, at))
        // A site of its own season is a design; a round that most sites share is not.
        if (!others && !isShared(round, trapsOfSite)) return []
        const absent = traps.filter((at) => !visited(round, at) && wasThere(at, round))
        // A visit that could not be read is no visit that is missing.
        const silent = absent.filter(({trap}) => !tables.visits?.unusableIds.has(trap.trapId))
        return silent.length === 0 ? [] : [{round, absent: silent, all: silent.length === traps.length}]
      })
      yield* findingOf(traps[0]!.site, missing, index)
    }
  }
} as const satisfies Rule

interface RoundVisits {
  readonly id: string
  readonly traps: ReadonlySet<string>
  readonly from: number
  readonly to: number
}

/** In the order of their first day; undefined where a visit has no round. */
function roundsOf(exposures: readonly Exposure[]): readonly RoundVisits[] | undefined {
  const rounds = new Map<string, {id: string; traps: Set<string>; from: number; to: number}>()
  for (const {round, trapId, opened, collected} of exposures) {
    if (round === undefined) return undefined
    const from = (opened ?? collected).day
    const seen = rounds.get(round)
    if (seen === undefined) {
      rounds.set(round, {id: round, traps: new Set([trapId]), from, to: collected.day})
      continue
    }
    seen.traps.add(trapId)
    seen.from = Math.min(seen.from, from)
    seen.to = Math.max(seen.to, collected.day)
  }
  return [...rounds.values()].sort((a, b) => a.from - b.from || a.to - b.to)
}

function isShared({traps}: RoundVisits, trapsOfSite: ReadonlyMap<string, readonly TrapAtWork[]>): boolean {
  let sites = 0
  for (const ofSite of trapsOfSite.values()) if (ofSite.some(({trap}) => traps.has(trap.trapId))) sites += 1
  return sites * 2 > trapsOfSite.size
}

function wasThere({trap: {installed, removed}}: TrapAtWork, {from, to}: RoundVisits): boolean {
  return (installed === undefined || installed < to) && (removed === undefined || removed > from)
}

function* findingOf(
  {siteId}: Site,
  missing: readonly {round: RoundVisits; absent: readonly TrapAtWork[]; all: boolean}[],
  index: StudyIndex
): Iterable<Found> {
  const [first, ...more] = missing
  if (first === undefined) return
  const {round, absent, all} = first
  const ids = absent.map(({trap}) => trap.trapId)
  const which = all ? 'any of its traps' : `${ids.length} of its traps`
  const names = all ? '' : `: ${fewOf(ids)}`
  const further = more.length === 0 ? '' : `; ${numberOf(more.length, 'round')} more like that`
  yield {
    place: index.place('traps', absent[0]!.trap.row, 'trap_id'),
    message: `site ${siteId} has no visit of ${which} in round ${round.id}${names}${further}`
  }
}
