import type {TableDescription} from '../model/column.ts'
import {tables} from '../model/columns.ts'
import {type FoundHeader, findHeader, inTwoLines} from './find-header.ts'
import {headerKey} from './header-key.ts'
import {type ColumnMap, type Resolution, resolveColumns} from './resolve-columns.ts'
import {mayBeTotal} from './totals.ts'

/** A catch table in which each taxon has a column of its own: one row per collection, or per site in old data. */
export function wideTable(long: TableDescription): TableDescription {
  return {...long, columns: long.columns.filter(({name}) => name !== 'taxon' && name !== 'count')}
}

/** Heads of columns that people keep beside their counts, and that no animal is called. */
const beside = [
  'notes',
  'note',
  'comment',
  'comments',
  'observer',
  'recorder',
  'year',
  'month',
  'week',
  'weather'
]

let noTaxa: ReadonlySet<string> | undefined

/** Whether a header can be no name of an animal. Most studies have no wide table, and none of this is made. */
function isNoTaxon(header: string): boolean {
  noTaxa ??= new Set(
    [
      ...beside,
      ...Object.values(tables).flatMap(({columns}) =>
        columns.flatMap(({name, otherHeads = []}) => [name, ...otherHeads])
      )
    ].map(headerKey)
  )
  return noTaxa.has(headerKey(header))
}

/**
 * The header of a wide catch table, if it is one: the study says so, or beside a trap and a day, or a site, stand two
 * columns or more that can be names of animals. A study that maps `taxon` or `count` to a header has none.
 */
export function findWideHeader(
  table: TableDescription,
  records: readonly (readonly string[])[],
  map: ColumnMap,
  shape: Shape
): FoundHeader | undefined {
  const found = findHeader(wideTable(table), records, map)
  if (found === undefined || wideResolution(table, found.cells, map, shape) === undefined) return undefined
  return namesBelow(found, records[found.record + 1] ?? [])
}

/** The columns of a header that is one of a wide catch table. */
export function wideResolution(
  table: TableDescription,
  cells: readonly string[],
  map: ColumnMap,
  shape: Shape
): Resolution | undefined {
  if (shape === undefined && ('taxon' in map || 'count' in map)) return undefined
  const resolution = resolveColumns(wideTable(table), cells, map)
  return shape === 'wide' || isWide({cells, resolution}) ? resolution : undefined
}

type Shape = 'wide' | 'long' | undefined
type Columns = Pick<FoundHeader, 'cells' | 'resolution'>

/** Columns of a wide table that are names of animals: not sums, not what people keep beside their counts. */
export function wideTaxa({cells, resolution}: Columns): readonly number[] {
  return resolution.unknown
    .map(({index}) => index)
    .filter((index) => !mayBeTotal((cells[index] ?? '').trim()) && !isNoTaxon(cells[index] ?? ''))
}

function isWide(columns: Columns): boolean {
  const {resolved, missing} = columns.resolution
  const placed = resolved.some(({column}) => column.name === 'trap_id' || column.name === 'site_id')
  return missing.length === 0 && placed && wideTaxa(columns).length >= 2
}

/** A group above, its kinds in the next line: the names that stand there are a part of the header. */
function namesBelow(found: FoundHeader, below: readonly string[]): FoundHeader {
  const {cells, resolution} = found
  const filled = [...below.keys()].filter((index) => (below[index] ?? '').trim() !== '')
  const places = new Set(resolution.resolved.map(({index}) => index))
  const nameNew = filled.some((index) => (cells[index] ?? '').trim() === '')
  if (!nameNew || filled.some((index) => places.has(index) || /\d/.test(below[index] ?? ''))) return found
  return {...found, cells: inTwoLines(cells, below), isSplit: true}
}
