import type {TableDescription} from '../model/column.ts'
import type {SourceTable} from '../model/study.ts'
import type {CellPlaces} from './cell-places.ts'
import type {Resolution} from './resolve-columns.ts'
import type {TableContents, TableReader} from './table-reader.ts'

/** A table whose header has been found and whose rows are being read. */
export interface OpenTable {
  readonly reader: TableReader
  readonly header: Header
  readonly places: CellPlaces
  readonly resolution: Resolution
  /** Header cells that are names of taxa, in a wide catch table. */
  readonly taxonColumns: readonly number[]
}

export interface Header {
  readonly cells: readonly string[]
  readonly line: number
}

/** What the rest of the program may know of the file behind a table. */
export function sourceTable(
  table: TableDescription,
  file: string,
  {header, places, resolution, taxonColumns}: OpenTable,
  contents: TableContents,
  encoding: string,
  delimiter: string
): SourceTable {
  const named = (index: number): string => (header.cells[index] ?? '').trim()
  const columns = new Map(
    resolution.resolved.map(({column, index}) => [column.name, {header: named(index), index}])
  )
  return {
    name: table.name,
    file,
    columns,
    unknownHeaders: resolution.unknown
      .filter(({index}) => !taxonColumns.includes(index))
      .map(({index}) => ({header: named(index), place: headerPlace(file, header, index, delimiter)})),
    rowsRead: contents.rowsRead,
    unusableIds: contents.unusableIds,
    encoding,
    delimiter,
    place(row, column) {
      const index = column === undefined ? undefined : columns.get(column)?.index
      if (index === undefined) return {file, line: places.line(row)}
      return {file, line: places.line(row, index), column: places.column(row, index)}
    }
  }
}

export function headerPlace(
  file: string,
  header: Header,
  index: number,
  delimiter = ','
): {file: string; line: number; column: number} {
  const before = header.cells
    .slice(0, index)
    .reduce((length, cell) => length + cell.length + delimiter.length, 0)
  return {file, line: header.line, column: before + 1}
}
