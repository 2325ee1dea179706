import {isoDay} from '../model/day.ts'
import type {Exposure} from '../model/study.ts'
import {grouped, type Visit} from './fieldwork.ts'
import {type NightsOpen, nightsOpen} from './nights-open.ts'
import {numberOf} from './number-of.ts'
import type {Found, Rule} from './rule.ts'
import type {StudyIndex} from './study-index.ts'

export const gapBetweenVisits = {
  code: 'gap-between-visits',
  severity: 'caution',
  summary: 'a trap has nights that no visit accounts for, while its neighbours stood open',
  why: 'If the trap stood open, its nights and its catch are missing from the effort; if it was lost or closed, nobody can tell.',
  remedy:
    'add the visit that is missing, with `missing` or `closed` as its condition where that is so; or correct `opened`',
  source:
    "open dates of every trap belong in a report: Kotze, O'Hara & Lehvavirta 2012; common practice, no source for the rule",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-18,sorted\nW1-1,2026-05-21,2026-06-01,sorted\nW1-2,2026-05-04,2026-06-01,empty\nW1-3,2026-05-04,2026-06-01,empty\n'
      },
      findings: [
        'visits.csv:3:6: trap W1-1 has no visit from 2026-05-18 to 2026-05-21 (3 nights), while others stood open'
      ]
    }
  ],
  *check(_study, index) {
    const {visits} = index.fieldwork
    const inStudy = atLeastHalf(visits)
    for (const ofSite of grouped(visits, ({at}) => at.site.siteId).values()) {
      const traps = new Set(ofSite.map(({exposure}) => exposure.trapId))
      // One or two traps say little of what was meant; then the whole study is asked.
      const unaccounted = traps.size > 2 ? atLeastHalf(ofSite) : inStudy
      const rounds = roundOrder(ofSite.map(({exposure}) => exposure))
      for (const trapId of traps) yield* gapsOf(trapId, unaccounted, rounds, index)
    }
  }
} as const satisfies Rule

function atLeastHalf(visits: readonly Visit[]): NightsOpen {
  return nightsOpen(visits, new Set(visits.map(({exposure}) => exposure.trapId)).size / 2)
}

/** A round that the trap has no visit in at all is another rule's business. */
type Rounds = ReadonlyMap<string | undefined, number>

function roundOrder(exposures: readonly Exposure[]): Rounds {
  const starts = new Map<string, number>()
  for (const {round, opened, collected} of exposures) {
    if (round === undefined) return new Map()
    const start = (opened ?? collected).day
    starts.set(round, Math.min(start, starts.get(round) ?? start))
  }
  return new Map([...starts].sort((a, b) => a[1] - b[1]).map(([round], at) => [round, at]))
}

function* gapsOf(
  trapId: string,
  unaccounted: NightsOpen,
  rounds: Rounds,
  index: StudyIndex
): Iterable<Found> {
  const gaps: {from: number; to: number; nights: number; next: Exposure}[] = []
  let last: Exposure | undefined
  for (const next of index.exposuresOfTrap.get(trapId) ?? []) {
    if (index.isAside('visits', next.row) || next.opened === undefined) continue
    if (last !== undefined && next.opened.day > last.collected.day) {
      const from = last.collected.day
      const to = next.opened.day
      const missesRound = (rounds.get(next.round) ?? 0) - (rounds.get(last.round) ?? 0) > 1
      const nights = missesRound ? 0 : unaccounted(from, to)
      if (nights > 0) gaps.push({from, to, nights, next})
    }
    if (last === undefined || next.collected.day >= last.collected.day) last = next
  }
  const [first, ...more] = gaps
  if (first === undefined) return
  const further = more.length === 0 ? '' : `; ${numberOf(more.length, 'gap')} more`
  yield {
    place: index.place('visits', first.next.row, 'opened'),
    message: `trap ${trapId} has no visit from ${isoDay(first.from)} to ${isoDay(first.to)} (${numberOf(first.to - first.from, 'night')}), while others stood open${further}`
  }
}
