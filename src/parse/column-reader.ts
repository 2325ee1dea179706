import type {Column} from '../model/column.ts'
import {type CellConventions, type CellOutcome, readCell} from './read-cell.ts'
import {type CellSource, cellText, type ResolvedColumn} from './resolve-columns.ts'

/** One column of a table: where its cells stand, and what was read from them before. */
export interface ColumnReader {
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

/** Distinct cells remembered per column; beyond it (vial numbers, remarks) remembering costs more than reading. */
const remembered = 20_000

export function columnReader(resolved: ResolvedColumn, conventions: CellConventions): ColumnReader {
  return {
    ...resolved,
    key: camelCase(resolved.column.name),
    translate: conventions.words[resolved.column.name],
    seen: new Map(),
    last: undefined
  }
}

/** The outcome of one cell, or undefined where it is empty. */
export function readColumn(
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

/** A code of the study's own in the words of its column. */
export function translated(text: string, words: Readonly<Record<string, string | number>>): string {
  return Object.hasOwn(words, text) ? String(words[text]).trim() : text
}

/** The field of a row that a column fills. */
export function camelCase(name: string): string {
  return name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase())
}
