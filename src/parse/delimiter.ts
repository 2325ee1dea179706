import Papa from 'papaparse'
import {headerKey} from './header-key.ts'

const candidates = [',', ';', '\t'] as const

/**
 * The character between cells, by the evidence of the header line: the one that uncovers most columns that the
 * project knows, and among equals the one that makes most cells. Data rows are no evidence: `1,5;2` is not two
 * columns more.
 */
export function delimiterOf(header: string, knownColumns: readonly string[]): string {
  const known = new Set(knownColumns.map(headerKey))
  const scored = candidates.map((delimiter) => {
    const [cells = []] = Papa.parse<string[]>(header, {delimiter, newline: '\n', quoteChar: '"'}).data
    return {delimiter, matches: cells.filter((cell) => known.has(headerKey(cell))).length, cells: cells.length}
  })
  return scored.reduce((best, next) =>
    next.matches > best.matches || (next.matches === best.matches && next.cells > best.cells) ? next : best
  ).delimiter
}
