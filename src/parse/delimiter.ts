import Papa from 'papaparse'
import {headerKey} from './header-key.ts'
import {separatorLine} from './separator-line.ts'

const candidates = [',', ';', '\t', '|'] as const

/**
 * The character between cells: what a first line such as `sep=;` says, else by the evidence of the first lines: the one that uncovers most of the columns that
 * are known in any one line, and among equals the one that makes most cells of it. Data rows are no evidence:
 * `1,5;2` is not two columns more.
 */
export function delimiterOf(start: string, knownColumns: readonly string[]): string {
  const stated = separatorLine(start)
  if (stated !== undefined) return stated
  const known = new Set(knownColumns.map(headerKey))
  const lines = start.split('\n').slice(0, 20)
  const scored = candidates.map((delimiter) => {
    const best = {delimiter, matches: 0, cells: 0}
    for (const line of lines) {
      if (line.trim() === '') continue
      const [cells = []] = Papa.parse<string[]>(line, {delimiter, newline: '\n', quoteChar: '"'}).data
      const matches = cells.filter((cell) => known.has(headerKey(cell))).length
      if (matches > best.matches || best.cells === 0) Object.assign(best, {matches, cells: cells.length})
    }
    return best
  })
  return scored.reduce((best, next) =>
    next.matches > best.matches || (next.matches === best.matches && next.cells > best.cells) ? next : best
  ).delimiter
}
