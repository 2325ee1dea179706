import type {TableDescription} from '../model/column.ts'
import type {Place} from '../model/place.ts'
import type {Problem, ProblemCode} from '../model/study.ts'
import type {CellPlaces} from './cell-places.ts'
import {type ColumnReader, camelCase, columnReader, readColumn} from './column-reader.ts'
import {emptyCells} from './empty-cells.ts'
import {namelessColumns} from './nameless-columns.ts'
import type {CellConventions, CellTrouble} from './read-cell.ts'
import {cellText, type ResolvedColumn} from './resolve-columns.ts'
import {mayBeTotal} from './totals.ts'

/** A typed row: its number and, by camel-case name, the value of every filled cell. */
export type TypedRow = {row: number} & Record<string, unknown>

export interface TableReaderSetup {
  readonly table: TableDescription
  readonly file: string
  readonly header: readonly string[]
  readonly resolved: readonly ResolvedColumn[]
  readonly conventions: CellConventions
  readonly places: CellPlaces
  /** From this column on a cell below no header sets its row aside: in a wide catch table it is a count of something. */
  readonly countsFrom?: number
}

export interface TableContents {
  readonly rows: readonly TypedRow[]
  readonly problems: readonly Problem[]
  readonly unusableIds: ReadonlyMap<string, number>
  readonly rowsRead: number
}

export interface TableReader {
  /** Read one record; the typed row, or undefined where it is blank or cannot be used. */
  add(cells: readonly string[], line: number, raw: string | undefined, broken: boolean): TypedRow | undefined
  contents(): TableContents
}

/** Reads the records of one table into typed rows, and notes what could not be read. */
export function tableReader(setup: TableReaderSetup): TableReader {
  const {table, file, header, places, conventions} = setup
  const rows: TypedRow[] = []
  const problems: Problem[] = []
  const unusableIds = new Map<string, number>()
  let rowsRead = 0
  const readers = setup.resolved.map((resolved) => columnReader(resolved, conventions))
  const idReader = readers[0]
  const nameless = namelessColumns(setup, problems)
  const emptyMeanings = table.columns.flatMap(({name, emptyMeans}): [string, string][] =>
    emptyMeans === undefined ? [] : [[camelCase(name), emptyMeans]]
  )
  // One constructor for each table: rows then share one shape and keep their values inside, which halves their memory.
  const Row = class {
    readonly row: number
    constructor(row: number) {
      this.row = row
    }
  } as new (
    row: number
  ) => TypedRow

  const problem = (
    code: ProblemCode,
    place: Place,
    row: number,
    setsAside: boolean,
    trouble: Omit<CellTrouble, 'code'>,
    cell?: string
  ) => {
    problems.push({
      code,
      place,
      table: table.name,
      row,
      setsAside,
      message: trouble.message,
      ...(trouble.remedy !== undefined && {remedy: trouble.remedy}),
      ...(cell !== undefined && {cell})
    })
  }

  const recordTrouble = (cells: readonly string[], line: number, row: number, broken: boolean): boolean => {
    const place = {file, line, column: 1}
    if (broken) {
      problem('unclosed-quote', place, row, true, {
        message: 'a quotation mark opens in this line and is not closed properly'
      })
      return true
    }
    if (cells.length <= header.length) return false
    const extra = cells.slice(header.length).find((cell) => cell.trim() !== '')
    if (extra === undefined) return false
    problem(
      'ragged-row',
      place,
      row,
      true,
      {
        message: `this row has ${cells.length} cells, the header ${header.length}`
      },
      extra.trim()
    )
    return true
  }

  /** A row of sums is no row of the study; what else is odd about it is no news. */
  const sumsRow = (row: number, label: string, before: number): undefined => {
    problems.length = before
    const message = `this row holds sums (\`${label}\`), not records; it is not used`
    problem('totals-row', {file, line: places.line(row), column: 1}, row, true, {message}, label)
  }

  const add: TableReader['add'] = (cells, line, raw, broken) => {
    if (cells.every((cell) => cell.trim() === '')) return undefined
    const row = rowsRead++
    places.add(line, cells, raw)
    const before = problems.length
    let empty: readonly ColumnReader[] | undefined
    let usable = !recordTrouble(cells, line, row, broken) && !nameless?.note(row, cells)
    const typed = new Row(row)
    for (const [key, value] of emptyMeanings) typed[key] = value
    if (usable) {
      for (const reader of readers) {
        const outcome = readColumn(reader, cells, conventions)
        if (outcome === undefined) {
          if (!reader.column.required || reader.column.mayBeEmpty) continue
          usable = false
          const label = cells.find((cell) => cell.trim() !== '')?.trim() ?? ''
          if (mayBeTotal(label)) return sumsRow(row, label, before)
          empty = empty === undefined ? [reader] : [...empty, reader]
        } else if ('value' in outcome) {
          typed[reader.key] = outcome.value
        } else if (outcome.code === 'totals-row') {
          return sumsRow(row, cellText(reader.source, cells), before)
        } else {
          const setsAside = Boolean(reader.column.required || reader.column.decisive)
          if (setsAside) usable = false
          const place = {file, line: places.line(row, reader.index), column: places.column(row, reader.index)}
          const isPlace = reader.column.kind === 'latitude' || reader.column.kind === 'longitude'
          problem(
            outcome.code,
            place,
            row,
            setsAside,
            outcome,
            isPlace ? undefined : cellText(reader.source, cells)
          )
        }
      }
    }
    if (empty !== undefined) problems.push(emptyCells(setup, row, empty, cells))
    if (usable) {
      rows.push(typed)
      return typed
    }
    if (idReader !== undefined) {
      const id = cellText(idReader.source, cells)
      if (id !== '' && !unusableIds.has(id)) unusableIds.set(id, row)
    }
    return undefined
  }

  const contents = () => ({
    rows,
    problems: [...problems, ...(nameless?.problems() ?? [])],
    unusableIds,
    rowsRead
  })
  return {add, contents}
}
