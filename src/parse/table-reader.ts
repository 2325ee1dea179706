import type {Column, TableDescription} from '../model/columns.ts'
import type {Place} from '../model/place.ts'
import type {Problem, ProblemCode} from '../model/study.ts'
import type {CellPlaces} from './cell-places.ts'
import {type CellConventions, type CellOutcome, type CellTrouble, readCell} from './read-cell.ts'
import {type CellSource, cellText, type ResolvedColumn} from './resolve-columns.ts'

/** A typed row: its number and, by camel-case name, the value of every filled cell. */
export type TypedRow = {row: number} & Record<string, unknown>

interface ColumnReader {
  readonly column: Column
  readonly key: string
  readonly index: number
  readonly source: CellSource
  readonly translate: Readonly<Record<string, string | number>> | undefined
  /** Cells repeat: a season has few dates and few taxa. What was read once is not read again. */
  readonly seen: Map<string, CellOutcome>
  /** Most often a cell says what the one above it said. */
  last: {readonly written: string; readonly outcome: CellOutcome | undefined} | undefined
}

export interface TableReaderSetup {
  readonly table: TableDescription
  readonly file: string
  readonly header: readonly string[]
  readonly resolved: readonly ResolvedColumn[]
  readonly conventions: CellConventions
  readonly places: CellPlaces
  /** What an empty cell stands for, by camel-case name. */
  readonly defaults?: Readonly<Record<string, unknown>>
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

/** Distinct cells remembered per column; beyond it (vial numbers, remarks) remembering costs more than reading. */
const remembered = 20_000

/** Reads the records of one table into typed rows, and notes what could not be read. */
export function tableReader(setup: TableReaderSetup): TableReader {
  const {table, file, header, places, conventions} = setup
  const rows: TypedRow[] = []
  const problems: Problem[] = []
  const unusableIds = new Map<string, number>()
  let rowsRead = 0
  const readers = setup.resolved.map(
    (resolved): ColumnReader => ({
      ...resolved,
      key: camelCase(resolved.column.name),
      translate: conventions.words[resolved.column.name],
      seen: new Map(),
      last: undefined
    })
  )
  const idReader = readers[0]
  const defaults = Object.entries(setup.defaults ?? {})
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

  const add: TableReader['add'] = (cells, line, raw, broken) => {
    if (cells.every((cell) => cell.trim() === '')) return undefined
    const row = rowsRead++
    places.add(line, cells, raw)
    let usable = !recordTrouble(cells, line, row, broken)
    const typed = new Row(row)
    for (const [key, value] of defaults) typed[key] = value
    if (usable) {
      for (const reader of readers) {
        const outcome = readColumn(reader, cells, conventions)
        if (outcome === undefined) {
          if (!reader.column.required || reader.column.mayBeEmpty) continue
          usable = false
          const place = {file, line: places.line(row, reader.index), column: places.column(row, reader.index)}
          problem('empty-required-cell', place, row, true, {message: `\`${reader.column.name}\` is empty`})
        } else if ('value' in outcome) {
          typed[reader.key] = outcome.value
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

  return {add, contents: () => ({rows, problems, unusableIds, rowsRead})}
}

/** The outcome of one cell, or undefined where it is empty. */
function readColumn(
  reader: ColumnReader,
  cells: readonly string[],
  conventions: CellConventions
): CellOutcome | undefined {
  const written = cellText(reader.source, cells)
  if (written === '' && reader.translate?.[''] === undefined) return undefined
  if (reader.last?.written === written) return reader.last.outcome
  const outcome = reader.seen.get(written) ?? readText(reader, written, conventions)
  reader.last = {written, outcome}
  return outcome
}

function readText(
  reader: ColumnReader,
  written: string,
  conventions: CellConventions
): CellOutcome | undefined {
  const text = reader.translate === undefined ? written : translated(written, reader.translate)
  const outcome = text === '' ? undefined : readCell(text, reader.column, conventions)
  if (outcome !== undefined && reader.seen.size < remembered) reader.seen.set(written, outcome)
  return outcome
}

function translated(text: string, words: Readonly<Record<string, string | number>>): string {
  return Object.hasOwn(words, text) ? String(words[text]).trim() : text
}

function camelCase(name: string): string {
  return name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase())
}
