import {nightsPerRound, rounds, seasonDay} from './season.ts'
import type {CatchRow, Season, Visit} from './season-records.ts'
import {stream} from './stream.ts'

interface VisitBlemish {
  readonly trap: string
  readonly round: string
  /** What the notebook says of it, and what stands in the list of blemishes. */
  readonly changes: Partial<Omit<Visit, 'trap_id' | 'round'>>
  /** Chance of an animal still to be in the vial. */
  readonly kept: number
}

const flood = {condition: 'overflowed', cover_state: 'washed off', fluid_left_mm: 110} as const
const diluted = {
  condition: 'diluted',
  fluid_left_mm: 62,
  remarks: 'rain water in the cup, below the holes'
} as const
const dried = {condition: 'dry', fluid_left_mm: 0, remarks: 'dried out, animals stuck to the bottom'} as const
const badger = {condition: 'disturbed', rim: undefined, cover_state: 'thrown off', fluid_left_mm: 5} as const
const gone = {
  condition: 'missing',
  sample: 'lost',
  rim: undefined,
  fluid_left_mm: undefined,
  cover_state: 'gone',
  sorted_by: undefined,
  sorted_on: undefined,
  vertebrates_count: undefined
} as const

/** What went wrong with the traps, as listed in blemishes.md. */
export const visitBlemishes: readonly VisitBlemish[] = [
  {trap: 'HAY2-2', round: 'R4', kept: 0.4, changes: {...flood, remarks: 'storm, water stood over the rim'}},
  {trap: 'HAY3-1', round: 'R4', kept: 0.4, changes: {...flood, remarks: 'beck over its banks'}},
  {trap: 'HAY3-2', round: 'R4', kept: 0.3, changes: {...flood, remarks: 'beck over its banks'}},
  {trap: 'HAY3-4', round: 'R4', kept: 0.3, changes: {...flood, remarks: 'beck over its banks'}},
  {
    trap: 'HAY3-5',
    round: 'R4',
    kept: 0,
    changes: {...flood, sample: 'empty', remarks: 'beck over its banks, nothing left in the cup'}
  },
  {trap: 'BAR3-6', round: 'R4', kept: 0.5, changes: {...flood, remarks: 'pool at the bottom of the field'}},
  {trap: 'HAY1-6', round: 'R4', kept: 1, changes: diluted},
  {trap: 'HAY2-3', round: 'R4', kept: 1, changes: diluted},
  {trap: 'HAY3-3', round: 'R4', kept: 1, changes: diluted},
  {trap: 'BAR1-4', round: 'R4', kept: 1, changes: diluted},
  {trap: 'BAR1-2', round: 'R7', kept: 0.5, changes: dried},
  {trap: 'BAR4-5', round: 'R7', kept: 0.5, changes: dried},
  {trap: 'HAY4-6', round: 'R7', kept: 0.5, changes: dried},
  {
    trap: 'OAK2-3',
    round: 'R2',
    kept: 0.4,
    changes: {...badger, remarks: 'dug up by a badger, most of the fluid out'}
  },
  {trap: 'OAK4-3', round: 'R5', kept: 0.4, changes: {...badger, remarks: 'dug up by a badger'}},
  {
    trap: 'OAK2-5',
    round: 'R6',
    kept: 0.45,
    changes: {
      ...badger,
      failed_on: dayOfRound('R6', 6),
      remarks: 'badger dug it up; the farmer saw it and wrote the day down'
    }
  },
  {
    trap: 'OAK4-4',
    round: 'R7',
    kept: 0.5,
    changes: {condition: 'trampled', remarks: 'cup dented, deer tracks'}
  },
  {
    trap: 'BAR1-5',
    round: 'R2',
    kept: 0.4,
    changes: {
      condition: 'raised',
      rim: 'proud',
      remarks: 'soil washed from the rim, 8 mm proud; bedded in again'
    }
  },
  {
    trap: 'BAR2-6',
    round: 'R5',
    kept: 0,
    changes: {...gone, remarks: 'gone, in the tramline of the sprayer; new cup set'}
  },
  {trap: 'HAY1-1', round: 'R7', kept: 0, changes: {...gone, remarks: 'cut up by the mower; new cup set'}},
  {
    trap: 'OAK3-4',
    round: 'R2',
    kept: 0,
    changes: {
      sample: 'lost',
      sorted_by: undefined,
      sorted_on: undefined,
      remarks: 'vial broken at the bench before sorting'
    }
  },
  {
    trap: 'BAR4-3',
    round: 'R8',
    kept: 0,
    changes: {sample: 'unsorted', sorted_by: undefined, sorted_on: undefined, remarks: 'not sorted yet'}
  },
  {
    trap: 'OAK2-2',
    round: 'R5',
    kept: 1,
    changes: {
      vertebrates_count: 1,
      vertebrates_what: 'common shrew (Sorex araneus)',
      vertebrates_fate: 'dead; kept in the freezer for the museum'
    }
  }
]

/** The same season after storm, sun, badgers, mower and a broken vial. */
export function withVisitBlemishes(season: Season): Season {
  const blemishOf = new Map(visitBlemishes.map((blemish) => [`${blemish.trap} ${blemish.round}`, blemish]))
  const rows = season.catch.flatMap((row) => {
    const blemish = blemishOf.get(`${row.trap_id} ${row.round}`)
    return blemish ? remaining(row, blemish.kept) : [row]
  })
  const caught = new Set(rows.map((row) => `${row.trap_id} ${row.round}`))
  const visits = season.visits.map((visit) => {
    const key = `${visit.trap_id} ${visit.round}`
    const changed = {...visit, ...blemishOf.get(key)?.changes}
    // A failed trap that lost all its animals would be a blemish more than the list says.
    if ((changed.sample === 'sorted') !== caught.has(key)) throw new Error(`${key} is ${changed.sample}`)
    return changed
  })
  return {visits, catch: rows}
}

function remaining(row: CatchRow, kept: number): CatchRow[] {
  if (kept === 1) return [row]
  const draw = stream(`left of ${row.trap_id} ${row.round} ${row.taxon} ${row.sex ?? ''}`)
  let count = 0
  for (let animal = 0; animal < Number(row.count); animal++) if (draw() < kept) count++
  return count > 0 ? [{...row, count}] : []
}

function dayOfRound(round: string, nights: number): string {
  const index = rounds.find((one) => one.round === round)?.index ?? 0
  return seasonDay(index * nightsPerRound + nights)
}
