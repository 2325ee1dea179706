import {asSentence, plainText} from './plain-text.ts'
import type {Cell, ReportTable} from './table.ts'

/** Something said below a table: of the cells with its mark, or of the whole table where it has none. */
export interface TableNote {
  readonly mark?: string
  readonly text: string
}

/** What the columns of notes of one table say. */
export interface NoteColumns {
  /** What they say alike in every row: it is said once, of the whole table. */
  readonly whole: readonly TableNote[]
  /** What the column of notes after a cell says of it, unless it says the same of every row. */
  beside(cells: readonly Cell[], index: number): string | undefined
}

export function noteColumns(table: ReportTable): NoteColumns {
  // Once for the table and not for each cell: a record has a row for every finding.
  const alike = table.columns.map((_, index) => wordsOfAll(table, index))
  return {
    whole: alike.flatMap((words, index) =>
      words === undefined ? [] : [{text: asNote(table, index, words)}]
    ),
    beside(cells, index) {
      if (table.columns[index + 1]?.asNotes !== true || alike[index + 1] !== undefined) return undefined
      const words = wordsOf(cells[index + 1])
      return words === '' ? undefined : asNote(table, index + 1, words)
    }
  }
}

function wordsOfAll({columns, rows, foot = []}: ReportTable, index: number): string | undefined {
  if (columns[index]?.asNotes !== true) return undefined
  const [first = '', ...others] = [...rows, ...foot].map((cells) => wordsOf(cells[index]))
  return first !== '' && others.every((words) => words === first) ? first : undefined
}

function wordsOf(cell: Cell | undefined): string {
  return cell?.type === 'text' ? plainText(cell.text) : ''
}

function asNote({columns}: ReportTable, index: number, words: string): string {
  return asSentence(`${plainText(columns[index]?.head ?? '')}: ${words}`)
}
