import type {Exposure} from '../model/study.ts'
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
    const rounds = roundsOf(exposures, index)
    if (rounds === undefined) return
    const {trapsOfSite} = index.fieldwork
    // A site of its own season is a design; a round that most sites share is not.
    const isShared = ({sites}: RoundVisits) => sites.size * 2 > trapsOfSite.size
    const shared = rounds.filter(isShared)
    const ofSite = new Map<string, RoundVisits[]>([...trapsOfSite.keys()].map((siteId) => [siteId, []]))
    for (const round of rounds) {
      if (!isShared(round)) for (const siteId of round.sites) ofSite.get(siteId)?.push(round)
    }
    for (const [siteId, traps] of trapsOfSite) {
      const asked = [...shared, ...(ofSite.get(siteId) ?? [])].sort(byFirstDay)
      const missing = asked.flatMap((round) => {
        const absent = traps.filter((at) => !round.traps.has(at.trap.trapId) && wasThere(at, round))
        // A visit that could not be read is no visit that is missing.
        const silent = absent.filter(({trap}) => !tables.visits?.unusableIds.has(trap.trapId))
        return silent.length === 0 ? [] : [{round, absent: silent, all: silent.length === traps.length}]
      })
      yield* findingOf(siteId, missing, index)
    }
  }
} as const satisfies Rule

interface RoundVisits {
  readonly id: string
  readonly traps: ReadonlySet<string>
  readonly sites: ReadonlySet<string>
  readonly from: number
  readonly to: number
}

/** In the order of their first day; undefined where a visit has no round. */
function roundsOf(exposures: readonly Exposure[], index: StudyIndex): readonly RoundVisits[] | undefined {
  const rounds = new Map<
    string,
    {id: string; traps: Set<string>; sites: Set<string>; from: number; to: number}
  >()
  for (const {round, trapId, opened, collected} of exposures) {
    if (round === undefined) return undefined
    const from = (opened ?? collected).day
    const seen = rounds.get(round) ?? {id: round, traps: new Set(), sites: new Set(), from, to: collected.day}
    rounds.set(round, seen)
    seen.traps.add(trapId)
    seen.sites.add(index.traps.get(trapId)?.siteId ?? '')
    seen.from = Math.min(seen.from, from)
    seen.to = Math.max(seen.to, collected.day)
  }
  return [...rounds.values()].sort(byFirstDay)
}

function byFirstDay(a: RoundVisits, b: RoundVisits): number {
  return a.from - b.from || a.to - b.to
}

function wasThere({trap: {installed, removed}}: TrapAtWork, {from, to}: RoundVisits): boolean {
  return (installed === undefined || installed < to) && (removed === undefined || removed > from)
}

function* findingOf(
  siteId: string,
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
