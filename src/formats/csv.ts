import Papa from 'papaparse'
import {freeName} from '../model/free-name.ts'

export type CsvCell = string | number | null

/**
 * Rows as CSV after RFC 4180: commas, quotes where needed, LF at every end of line. Numbers are written in full,
 * a cell without a value is empty. Text that a spreadsheet would carry out as a formula gets an apostrophe
 * before it; numbers, also negative ones, stay as they are.
 *
 * @throws RangeError when a number is not finite.
 */
export function csv(columns: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  const lines = [distinct(columns), ...rows].map((cells) => cells.map(written))
  return `${Papa.unparse(lines, {newline: '\n', header: false, skipEmptyLines: false})}\n`
}

function written(cell: CsvCell): string {
  if (cell === null) return ''
  if (typeof cell === 'string') return harmless(cell.replace(/\r\n?/g, '\n'))
  if (!Number.isFinite(cell)) throw new RangeError(`${cell} cannot be written to a table`)
  return String(cell)
}

/** Spreadsheets calculate what begins with one of these signs, in full width too (OWASP, 'CSV injection'). */
function harmless(text: string): string {
  return /^[=+\-@\t\n＝＋－＠]./s.test(text) && !isNumber(text) ? `'${text}` : text
}

function isNumber(text: string): boolean {
  return /^[+-]?\d+(?:[.,]\d+)*$/.test(text)
}

/** Column heads of which no two are the same, as readers of CSV expect. */
function distinct(columns: readonly string[]): string[] {
  const used = new Set<string>()
  return columns.map((column) => {
    const name = freeName(
      column,
      (one) => used.has(one),
      (number) => `${column} (${number})`
    )
    used.add(name)
    return name
  })
}
