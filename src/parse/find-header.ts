import type {TableDescription} from '../model/columns.ts'
import {type ColumnMap, type Resolution, resolveColumns} from './resolve-columns.ts'

export interface FoundHeader {
  /** Number of the header among the records looked at. */
  readonly record: number
  readonly cells: readonly string[]
  readonly resolution: Resolution
}

/** Titles, project names and export notes above a header are rarely longer than this. */
const linesLookedAt = 20

/**
 * The header of a table: the first record that names every required column, else the one that names most. People
 * put titles above their tables; a title names no columns.
 */
export function findHeader(
  table: TableDescription,
  records: readonly (readonly string[])[],
  map: ColumnMap
): FoundHeader | undefined {
  let best: FoundHeader | undefined
  for (const [record, written] of records.slice(0, linesLookedAt).entries()) {
    const cells = written.slice(0, filledWidth(written))
    if (cells.length === 0) continue
    const resolution = resolveColumns(table, cells, map)
    const found = {record, cells, resolution}
    if (resolution.missing.length === 0) return found
    if (best === undefined || resolution.resolved.length > best.resolution.resolved.length) best = found
  }
  return best
}

/** Cells of a record, less the empty ones that spreadsheets leave behind on the right. */
export function filledWidth(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell.trim() !== '') + 1
}

/** A line for people: it starts with `#` and fills one cell only. */
export function isComment(cells: readonly string[]): boolean {
  return (cells[0] ?? '').trimStart().startsWith('#') && filledWidth(cells) === 1
}
