import type {Problem} from '../model/study.ts'
import type {TableReaderSetup} from './table-reader.ts'

/** Watches the cells that stand below an empty header: nobody can say what they are, and they must not be lost. */
export interface NamelessColumns {
  /** Look at one row; whether it cannot be used. */
  note(row: number, cells: readonly string[]): boolean
  /** What is to be said of such columns when all rows have been read. */
  problems(): readonly Problem[]
}

/** Undefined where every column has a header, so that most tables are spared the look. */
export function namelessColumns(
  {table, file, header, places, countsFrom}: TableReaderSetup,
  found: Problem[]
): NamelessColumns | undefined {
  const nameless = [...header.keys()].filter((index) => (header[index] ?? '').trim() === '')
  if (nameless.length === 0) return undefined
  const harmless = new Map<number, {row: number; cells: number}>()
  return {
    note(row, cells) {
      for (const index of nameless) {
        const text = (cells[index] ?? '').trim()
        if (text === '') continue
        if (countsFrom !== undefined && index >= countsFrom) {
          found.push({
            code: 'nameless-column',
            place: {file, line: places.line(row, index), column: places.column(row, index)},
            message: `column ${index + 1} has no header, so nobody can tell what was counted here`,
            cell: text,
            table: table.name,
            row,
            setsAside: true
          })
          return true
        }
        const seen = harmless.get(index)
        if (seen) seen.cells += 1
        else harmless.set(index, {row, cells: 1})
      }
      return false
    },
    problems: () =>
      [...harmless].map(([index, {row, cells}]) => ({
        code: 'nameless-column',
        place: {file, line: places.line(row, index), column: places.column(row, index)},
        message: `column ${index + 1} has no header; its ${cells === 1 ? 'one cell is' : `${cells} cells are`} used for nothing`,
        setsAside: false
      }))
  }
}
