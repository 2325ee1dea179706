import {type Term, termName} from './terms.ts'

/** A column of one table: its term, and what it holds of a row. Nothing known is an empty cell, never a word for it. */
export interface TermColumn<Row> {
  readonly term: Term
  readonly value: (row: Row) => string | number | boolean | undefined
}

/** One table of a Darwin Core archive: the file, meta.xml and the Data Package are all written from this. */
export interface TermTable<Row> {
  readonly file: string
  /** Class of the rows. */
  readonly rowType: Term
  readonly title: string
  /** The first column is the event that a row is, or belongs to. */
  readonly columns: readonly TermColumn<Row>[]
  /** What is the same for every row, and needs no column. */
  readonly constants: readonly (readonly [term: Term, value: string])[]
  readonly rows: () => Iterable<Row>
}

/** Characters gathered before they are handed on. */
const chunkLength = 64 * 1024

/** The table as UTF-8 CSV: commas, LF, quotes where needed, no line break inside a cell because some readers split by line. */
export function* termTableBytes<Row>({columns, rows}: TermTable<Row>): Iterable<Uint8Array> {
  const encoder = new TextEncoder()
  let text = `${columns.map(({term}) => termName(term)).join(',')}\n`
  for (const row of rows()) {
    for (let index = 0; index < columns.length; index++) {
      const value = columns[index]!.value(row)
      if (index > 0) text += ','
      if (value !== undefined) text += typeof value === 'string' ? cell(value) : value
    }
    text += '\n'
    if (text.length < chunkLength) continue
    yield encoder.encode(text)
    text = ''
  }
  if (text !== '') yield encoder.encode(text)
}

function cell(text: string): string {
  if (!/[",\s]/.test(text)) return text
  const line = /[^\S ]/.test(text) ? text.replace(/\s+/g, ' ').trim() : text
  return /[",]|^ | $/.test(line) ? `"${line.replaceAll('"', '""')}"` : line
}
