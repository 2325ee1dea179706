import type {SourceTable} from '../model/study.ts'

/** Tells the header of a table from titles and notes above it: every column stands where the reader found it. */
export function headerTest({columns}: SourceTable): (cells: readonly string[]) => boolean {
  const places = [...columns.values()]
  return (cells) => places.every(({header, index}) => (cells[index] ?? '').trim() === header)
}
