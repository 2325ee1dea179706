import {carabids} from './carabids.ts'
import {csvText} from './csv-text.ts'
import {spiders} from './spiders.ts'

export interface Visit {
  readonly trap_id: string
  /** Not written: the trap tells it. */
  readonly site_id: string
  readonly opened: string
  readonly collected: string
  readonly condition: string
  readonly failed_on?: string
  readonly sample: 'sorted' | 'empty' | 'unsorted' | 'lost'
  readonly round: string
  readonly rim?: 'flush' | 'sunken' | 'proud' | undefined
  readonly fluid_left_mm?: number | undefined
  readonly cover_state?: string | undefined
  readonly collected_by: string
  readonly sorted_by?: string | undefined
  readonly sorted_on?: string | undefined
  readonly vertebrates_count?: number | undefined
  readonly vertebrates_what?: string
  readonly vertebrates_fate?: string
  readonly remarks?: string
}

export interface CatchRow {
  readonly trap_id: string
  /** Not written: the collection day tells it. */
  readonly round: string
  readonly collected: string
  readonly taxon: string
  /** Text only where somebody wrote more than a number. */
  readonly count: number | string
  readonly sex?: 'female' | 'male'
  readonly life_stage?: 'larva' | 'juvenile'
  readonly qualifier?: string
  readonly identified_by: string
  readonly verified_by?: string
  readonly voucher?: string
  readonly remarks?: string
}

export interface Season {
  readonly visits: readonly Visit[]
  readonly catch: readonly CatchRow[]
}

const sexOrder = ['female', 'male', undefined]

/** By day, trap, then carabids before spiders and other names, each by alphabet: as a season's sheet grows. */
export function inBenchOrder(rows: readonly CatchRow[], trapIds: readonly string[]): CatchRow[] {
  const taxonOrder = [...carabids, ...spiders].map((taxon) => taxon.taxon)
  const place = (row: CatchRow) => {
    const at = taxonOrder.indexOf(row.taxon)
    return at < 0 ? taxonOrder.length : at
  }
  return rows.toSorted(
    (left, right) =>
      byCodeUnits(left.collected, right.collected) ||
      trapIds.indexOf(left.trap_id) - trapIds.indexOf(right.trap_id) ||
      place(left) - place(right) ||
      byCodeUnits(left.taxon, right.taxon) ||
      sexOrder.indexOf(left.sex) - sexOrder.indexOf(right.sex)
  )
}

/** The first animal of each kind goes to the collection, where a second pair of eyes looks at it. */
export function withVouchers(rows: readonly CatchRow[], kinds: ReadonlySet<string>): CatchRow[] {
  const kept = new Set<string>()
  return rows.map((row) => {
    if (kept.has(row.taxon) || !kinds.has(row.taxon) || row.qualifier !== undefined) return row
    kept.add(row.taxon)
    const voucher = `QVC-2025-${String(kept.size).padStart(3, '0')}`
    return {...row, verified_by: 'Sedge Lantern', voucher}
  })
}

export function visitsCsv(visits: readonly Visit[]): string {
  return csvText(
    [
      'trap_id',
      'opened',
      'collected',
      'condition',
      'failed_on',
      'sample',
      'round',
      'rim',
      'fluid_left_mm',
      'cover_state',
      'collected_by',
      'sorted_by',
      'sorted_on',
      'vertebrates_count',
      'vertebrates_what',
      'vertebrates_fate',
      'remarks'
    ],
    visits
  )
}

export function catchCsv(rows: readonly CatchRow[]): string {
  return csvText(
    [
      'trap_id',
      'collected',
      'taxon',
      'count',
      'sex',
      'life_stage',
      'qualifier',
      'identified_by',
      'verified_by',
      'voucher',
      'remarks'
    ],
    rows
  )
}

function byCodeUnits(left: string, right: string): number {
  return left < right ? -1 : left > right ? 1 : 0
}
