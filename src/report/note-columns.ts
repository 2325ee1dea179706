import {asSentence, plainText} from './plain-text.ts'
import type {Cell, ReportTable} from './table.ts'

/** Something said below a table: of the cells with its mark, or of the whole table where it has none. */
export interface TableNote {
  readonly mark?: string
  readonly text: string
}

/** What columns of notes say alike in every row: it is said once, of the whole table. */
export function wholeNotes(table: ReportTable): TableNote[] {
  return table.columns.flatMap((_, index) => {
    const words = wordsOfAll(table, index)
    return words === undefined ? [] : [{text: asNote(table, index, words)}]
  })
}

/** What the column of notes after a cell says of it, unless it says the same of every row. */
export function noteBeside(table: ReportTable, cells: readonly Cell[], index: number): string | undefined {
  const words = wordsOf(cells[index + 1])
  const isNote = table.columns[index + 1]?.asNotes === true
  if (!isNote || words === '' || wordsOfAll(table, index + 1) !== undefined) return undefined
  return asNote(table, index + 1, words)
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
