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
  /** Columns that stand together and hang on one object alone, which many rows share: they are written once for it. */
  readonly repeated?: {readonly from: number; readonly to: number; readonly of: (row: Row) => object}
}

/** Characters gathered before they are handed on. */
const chunkLength = 64 * 1024

/** The table as UTF-8 CSV: commas, LF, quotes where needed, no line break inside a cell because some readers split by line. */
export function* termTableBytes<Row>({columns, rows, repeated}: TermTable<Row>): Iterable<Uint8Array> {
  const encoder = new TextEncoder()
  const values = columns.map(({value}) => value)
  const {from, to, of} = repeated ?? {from: values.length, to: values.length, of: undefined}
  const [before, shared, after] = [values.slice(0, from), values.slice(from, to), values.slice(to)].map(cells)
  const written = new WeakMap<object, string>()
  const sharedText = (row: Row): string => {
    if (of === undefined) return ''
    const object = of(row)
    let text = written.get(object)
    if (text === undefined) {
      text = shared!(row)
      written.set(object, text)
    }
    return text
  }
  let text = `${columns.map(({term}) => termName(term)).join(',')}\n`
  for (const row of rows()) {
    // Each cell brings its comma; the first one of the line is not wanted.
    text += `${(before!(row) + sharedText(row) + after!(row)).slice(1)}\n`
    if (text.length < chunkLength) continue
    yield encoder.encode(text)
    text = ''
  }
  if (text !== '') yield encoder.encode(text)
}

/** Cells that are kept together as one text. */
const groupSize = 4

/** Some cells of a row as text, each after a comma. */
function cells<Row>(values: readonly TermColumn<Row>['value'][]): (row: Row) => string {
  const groups: ((row: Row) => string)[] = []
  for (let from = 0; from < values.length; from += groupSize)
    groups.push(cellGroup(values.slice(from, from + groupSize)))
  return (row) => {
    let text = ''
    for (const group of groups) text += group(row)
    return text
  }
}

/** Rows resemble the row before: what is the same is not written out again. */
function cellGroup<Row>(values: readonly TermColumn<Row>['value'][]): (row: Row) => string {
  const last: ReturnType<TermColumn<Row>['value']>[] = values.map(() => undefined)
  const texts = values.map(() => ',')
  let joined = texts.join('')
  return (row) => {
    let isSame = true
    for (let index = 0; index < values.length; index++) {
      const value = values[index]!(row)
      if (value === last[index]) continue
      isSame = false
      last[index] = value
      texts[index] = value === undefined ? ',' : `,${typeof value === 'string' ? cell(value) : value}`
    }
    if (!isSame) joined = texts.join('')
    return joined
  }
}

function cell(text: string): string {
  if (!/[",\s]/.test(text)) return text
  const line = /[^\S ]/.test(text) ? text.replace(/\s+/g, ' ').trim() : text
  return /[",]|^ | $/.test(line) ? `"${line.replaceAll('"', '""')}"` : line
}
