import {rounds} from './season.ts'
import type {CatchRow} from './season-records.ts'
import {stream} from './stream.ts'

interface FurtherRows {
  readonly taxon: string
  readonly life_stage: 'larva' | 'juvenile'
  readonly identified_by: string
  /** Trap and round, then how many. */
  readonly found: readonly (readonly [trap: string, round: string, count: number])[]
}

/** Young animals that no key takes to species. They are no blemish of the work, but no species either. */
const youngAnimals: readonly FurtherRows[] = [
  {
    taxon: 'Carabidae',
    life_stage: 'larva',
    identified_by: 'Hazel Underhedge',
    found: [
      ['OAK1-2', 'R1', 1],
      ['OAK3-6', 'R1', 2],
      ['BAR2-1', 'R3', 1],
      ['HAY1-3', 'R8', 1]
    ]
  },
  {
    taxon: 'Lycosidae',
    life_stage: 'juvenile',
    identified_by: 'Fern Loomweaver',
    found: [
      ['HAY1-2', 'R1', 2],
      ['HAY4-5', 'R1', 1],
      ['HAY1-4', 'R6', 4],
      ['HAY2-1', 'R6', 3],
      ['HAY2-6', 'R6', 6],
      ['HAY3-2', 'R6', 2],
      ['HAY4-1', 'R7', 5],
      ['HAY4-2', 'R7', 7],
      ['HAY3-6', 'R7', 3],
      ['OAK2-6', 'R7', 1],
      ['BAR3-1', 'R7', 2],
      ['BAR4-2', 'R8', 1],
      ['HAY1-5', 'R8', 4],
      ['HAY2-5', 'R8', 2]
    ]
  },
  {
    taxon: 'Linyphiidae',
    life_stage: 'juvenile',
    identified_by: 'Fern Loomweaver',
    found: [
      ['OAK1-4', 'R5', 1],
      ['BAR1-1', 'R5', 2],
      ['BAR2-3', 'R6', 1],
      ['OAK4-2', 'R6', 1],
      ['HAY3-3', 'R7', 1]
    ]
  }
]

/** Rows that the bench left less certain than the rest, with young animals added. */
export function withBenchDoubts(rows: readonly CatchRow[]): CatchRow[] {
  const amara = rowsToBlur(rows, (row) => row.taxon.startsWith('Amara'), 7, 'blur Amara')
  const older = rowsToBlur(rows, (row) => row.taxon === 'Limodromus assimilis', 2, 'older name')
  const blurred = rows.map((row): CatchRow => {
    const at = amara.indexOf(row)
    if (at === 0) return {...row, qualifier: 'cf.', remarks: 'female, wing cases rubbed'}
    if (at > 0) return {...row, taxon: 'Amara sp.', remarks: 'damaged, not named further'}
    return older.includes(row) ? {...row, taxon: 'Platynus assimilis'} : row
  })
  const young = youngAnimals.flatMap(({found, ...kind}) =>
    found.map(([trap, round, count]): CatchRow => {
      const collected = rounds.find((one) => one.round === round)?.collected ?? ''
      return {...kind, trap_id: trap, round, collected, count}
    })
  )
  return [...blurred, ...young]
}

function rowsToBlur(
  rows: readonly CatchRow[],
  fits: (row: CatchRow) => boolean,
  howMany: number,
  name: string
): CatchRow[] {
  const draw = stream(name)
  const left = rows.filter(fits)
  return Array.from({length: Math.min(howMany, left.length)}, () =>
    left.splice(Math.floor(draw() * left.length), 1)
  ).flat()
}

export interface TypingError {
  readonly what: string
  /** Data row of catch.csv, counted from 0, where it stands. */
  readonly row: number
}

/** The slips of the keyboard, in rows that are otherwise as they were. */
export function withTypingErrors(rows: readonly CatchRow[]): {rows: CatchRow[]; errors: TypingError[]} {
  const typed = [...rows]
  const misspelt = change(typed, (row) => row.taxon === 'Pterostichus melanarius' && row.count === 3, {
    taxon: 'Pterostichus melanraius'
  })
  const wrongTrap = change(typed, (row) => row.trap_id === 'OAK2-3' && row.round === 'R5', {
    trap_id: 'OAK2-33'
  })
  const starred = change(typed, (row) => row.count === 12 && row.round === 'R6', {count: '12*'})
  const twice = typed.findIndex((row) => row.trap_id === 'HAY4-2' && row.round === 'R3')
  const copied = typed[twice]
  if (!copied) throw new Error('the season has no row to type twice')
  typed.splice(twice + 1, 0, copied)
  const shifted = (row: number) => (row > twice ? row + 1 : row)
  return {
    rows: typed,
    errors: [
      {
        row: shifted(misspelt),
        what: '`Pterostichus melanraius` for `Pterostichus melanarius`; the name is not in taxa.csv'
      },
      {row: shifted(wrongTrap), what: 'trap `OAK2-33` for `OAK2-3`; there is no such trap'},
      {row: twice + 1, what: 'the row above once more, cell by cell'},
      {row: shifted(starred), what: 'count `12*`, whose star nobody can explain any more'}
    ].sort((left, right) => left.row - right.row)
  }
}

function change(rows: CatchRow[], fits: (row: CatchRow) => boolean, changes: Partial<CatchRow>): number {
  const at = rows.findIndex(fits)
  const row = rows[at]
  if (!row) throw new Error(`the season has no row for ${JSON.stringify(changes)}`)
  rows[at] = {...row, ...changes}
  return at
}
