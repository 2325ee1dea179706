import {Paragraph, type ParagraphChild, type Table, TextRun} from 'docx'
import type {Table as TextTable} from 'mdast'
import type {TableBlock} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import {isRowHead, printTable} from '../report/print-table.ts'
import {captionBookmark, type Draft} from './docx-draft.ts'
import {bookmarkWords, captionLabel} from './docx-fields.ts'
import {docxGrid} from './docx-grid.ts'
import {docxRuns} from './docx-runs.ts'

/** A piece of a document, and whether it needs a page laid sideways. */
export interface Piece {
  readonly blocks: readonly (Paragraph | Table)[]
  readonly landscape: boolean
  /** A heading stands on the page of what it heads. */
  readonly isHeading?: boolean
}

/** A numbered table with its caption above and its notes below. */
export function docxTable(draft: Draft, {name, number, table, children}: TableBlock): Piece {
  const {columns, rows, foot, notes, rowsInAll} = printTable(table)
  const first = caption([
    ...captionLabel(draft, 'Table', number),
    new TextRun(' '),
    ...docxRuns(draft, children)
  ])
  if (rows.length === 0) {
    const empty = new TextRun({text: plainText(table.empty), italics: true})
    return {blocks: [first, note([empty]), space()], landscape: false}
  }
  const {tables, landscape} = docxGrid(draft, {
    columns: columns.map(({head, unit, align}) => ({head: [{type: 'text', value: head}], unit, align})),
    rows: [
      ...rows.map((cells) => ({cells, isTotal: false})),
      ...foot.map((cells) => ({cells, isTotal: true}))
    ],
    rowHeads: Math.max(
      1,
      columns.findIndex((_, index) => !isRowHead({columns}, index))
    )
  })
  const again = [new TextRun({text: `Table ${number}`, bold: true})]
  const parts = tables.flatMap((part, index) => [
    index === 0
      ? first
      : caption([bookmarkWords(captionBookmark('Table', number), again), new TextRun(', continued')]),
    part
  ])
  const below = notes.map(({mark, text}) =>
    note(
      mark === undefined
        ? [new TextRun(text)]
        : [new TextRun({text: mark, superScript: true}), new TextRun(` ${text}`)]
    )
  )
  if (rows.length < rowsInAll) {
    const words = `The first ${rows.length} of ${rowsInAll} rows; all of them are in tables/${name}.csv.`
    below.push(note([new TextRun(words)]))
  }
  return {blocks: [...parts, ...below, space()], landscape}
}

/** A table that a template or an author wrote out in Markdown. */
export function docxTextTable(draft: Draft, {align, children}: TextTable): Piece {
  const [head, ...rows] = children.map((row) => row.children)
  const {tables, landscape} = docxGrid(draft, {
    columns: (head ?? []).map((cell, index) => ({
      head: cell.children,
      align: align?.[index] === 'right' ? 'right' : 'left'
    })),
    rows: rows.map((cells) => ({cells, isTotal: false})),
    rowHeads: 1
  })
  return {blocks: tables.flatMap((table) => [table, space()]), landscape}
}

function caption(children: ParagraphChild[]): Paragraph {
  return new Paragraph({style: 'Caption', keepNext: true, spacing: {before: 280}, children})
}

function note(children: ParagraphChild[]): Paragraph {
  return new Paragraph({style: 'TableNote', children})
}

/** Two tables without a paragraph between them would become one, and the last block of a page must be a paragraph. */
function space(): Paragraph {
  return new Paragraph({style: 'TableNote', spacing: {before: 0, after: 80}})
}
