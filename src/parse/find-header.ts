import type {TableDescription} from '../model/column.ts'
import {type ColumnMap, type Resolution, resolveColumns} from './resolve-columns.ts'
import {isSeparatorRecord} from './separator-line.ts'

export interface FoundHeader {
  /** Number of the header among the records looked at. */
  readonly record: number
  readonly cells: readonly string[]
  readonly resolution: Resolution
  /** Whether the names stand in this record and the next: only together they are a header. */
  readonly isSplit?: true
}

/** Titles, project names and export notes above a header are rarely longer than this. */
const linesLookedAt = 20

/**
 * The header of a table: the first record that names every required column, else two that do so together, else the
 * one that names most. People put titles above their tables; a title names no columns.
 */
export function findHeader(
  table: TableDescription,
  records: readonly (readonly string[])[],
  map: ColumnMap
): FoundHeader | undefined {
  const candidates: FoundHeader[] = []
  for (const [record, written] of records.slice(0, linesLookedAt).entries()) {
    const cells = written.slice(0, filledWidth(written))
    if (cells.length === 0 || isSeparatorRecord(written)) continue
    const candidate = {record, cells, resolution: resolveColumns(table, cells, map)}
    if (candidate.resolution.missing.length === 0) return candidate
    candidates.push(candidate)
  }
  for (const [index, {record, cells}] of candidates.entries()) {
    const below = candidates[index + 1]
    if (below?.record !== record + 1) continue
    const joined = inTwoLines(cells, below.cells)
    const resolution = resolveColumns(table, joined, map)
    if (resolution.missing.length === 0) return {record, cells: joined, resolution, isSplit: true}
  }
  return candidates.reduce<FoundHeader | undefined>(
    (best, next) => (best === undefined || evidence(next) > evidence(best) ? next : best),
    undefined
  )
}

/** A header in two lines: what the lower one leaves empty is said in the upper one. */
export function inTwoLines(upper: readonly string[], lower: readonly string[]): readonly string[] {
  return Array.from({length: Math.max(upper.length, lower.length)}, (_, index) =>
    (lower[index] ?? '').trim() === '' ? (upper[index] ?? '') : (lower[index] ?? '')
  )
}

/** How much speaks for a line being the header: columns that it names, columns that it may mean, cells. */
function evidence({cells, resolution}: FoundHeader): number {
  const asked = resolution.missing.filter(({hint}) => hint !== undefined).length
  return (
    resolution.resolved.length * 10_000 + asked * 1000 + cells.filter((cell) => cell.trim() !== '').length
  )
}

/** Cells of a record, less the empty ones that spreadsheets leave behind on the right. */
export function filledWidth(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell.trim() !== '') + 1
}

/** A line for people: it starts with `#` and fills one cell only. */
export function isComment(cells: readonly string[]): boolean {
  return (cells[0] ?? '').trimStart().startsWith('#') && filledWidth(cells) === 1
}
