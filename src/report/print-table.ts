import type {PhrasingContent} from 'mdast'
import {formatDate, type Language} from '../model/format-date.ts'
import {isDefined, type Measure} from '../model/quantity.ts'
import {bareColumns} from './bare-columns.ts'
import {formatAmount, formatDigits, formatInterval, formatMeasure} from './format-measure.ts'
import {noteColumns, type TableNote} from './note-columns.ts'
import {asSentence, plainText} from './plain-text.ts'
import type {Cell, ReportTable, TableColumn} from './table.ts'
import {taxonName} from './taxon-name.ts'

/** A cell as every format shows it. */
export interface PrintedCell {
  readonly children: PhrasingContent[]
  /** Letter of the note that must stand beside it. */
  readonly mark?: string
}

/** A table as every format shows it: cells in words, and below it what must be said of some of them. */
export interface PrintedTable {
  readonly columns: readonly TableColumn[]
  readonly rows: readonly (readonly PrintedCell[])[]
  readonly foot: readonly (readonly PrintedCell[])[]
  /** Cautions, and reasons for numbers that are not defined, in sentences; one without mark is of the whole table. */
  readonly notes: readonly TableNote[]
  readonly rowsInAll: number
}

/** Beyond so many rows a page shows only the first ones, and names the file that has them all. */
const mostRows = 2000
const rowsShownOfMore = 200

/** Stands where there is no number. */
const noValue = '–'

const printed = new WeakMap<ReportTable, PrintedTable>()

/** A table is printed once for all the formats that show it. */
export function printTable(table: ReportTable): PrintedTable {
  const known = printed.get(table) ?? print(table)
  printed.set(table, known)
  return known
}

function print(table: ReportTable): PrintedTable {
  const own = noteColumns(table)
  const bare = bareColumns(table, own)
  const isShown = (index: number) => table.columns[index]?.asNotes !== true && !bare.indexes.has(index)
  const notes: TableNote[] = [...own.whole, ...bare.notes]
  const printRow = (cells: readonly Cell[]): PrintedCell[] =>
    cells.flatMap((cell, index) => {
      const column = table.columns[index]
      if (!isShown(index)) return []
      const note = [noteOf(cell), own.beside(cells, index)].filter((said) => said !== undefined).join(' ')
      const mark = markOf(note, notes)
      const children = printCell(cell, column, table.language)
      const isBare = children.length === 0 && mark !== undefined
      return [{children: isBare ? text(noValue) : children, ...(mark !== undefined && {mark})}]
    })
  const shown = table.rows.length > mostRows ? table.rows.slice(0, rowsShownOfMore) : table.rows
  const columns = table.columns.filter((_, index) => isShown(index))
  return {
    columns: columns.map((column) => ({...column, head: plainText(column.head)})),
    rows: shown.map(printRow),
    foot: (table.foot ?? []).map(printRow),
    notes,
    rowsInAll: table.rows.length
  }
}

/** Whether the words of a column head are those of the row heads: the first column where none says so. */
export function isRowHead({columns}: Pick<ReportTable, 'columns'>, index: number): boolean {
  return columns.some(({rowHead}) => rowHead === true) ? columns[index]?.rowHead === true : index === 0
}

function printCell(
  cell: Cell,
  column: TableColumn | undefined,
  language: Language | undefined
): PhrasingContent[] {
  switch (cell.type) {
    case 'measure':
      return text(measureWords(cell.measure, column))
    case 'interval':
      return text(formatInterval(cell.measure) ?? noValue)
    case 'text':
      return cell.marked ? marked(plainText(cell.text)) : text(plainText(cell.text))
    case 'date':
      return text(formatDate(cell.day, language) ?? plainText(cell.day))
    case 'place':
      return text(plainText(cell.place))
    case 'taxon': {
      const authority = cell.authority === undefined ? '' : ` ${plainText(cell.authority)}`
      return [...taxonName(plainText(cell.taxon), cell.rank), ...text(authority)]
    }
    case 'blank':
      return []
  }
}

/** Words with the pieces of files among them as code. */
function marked(words: string): PhrasingContent[] {
  const pieces = words.split('`')
  // An odd number of marks: one of them belongs to what the study wrote.
  if (pieces.length % 2 === 0) return text(words)
  return pieces.flatMap((value, index): PhrasingContent[] => {
    if (value === '') return []
    return index % 2 === 1 ? [{type: 'inlineCode', value}] : text(value)
  })
}

/** Digits alone where the column head names the unit, or in a column of numbers; with its unit among words. */
function measureWords(measure: Measure, column: TableColumn | undefined): string {
  if (!isDefined(measure)) return noValue
  if (measure.kind === 'share')
    return column?.unit?.includes('%') ? formatDigits(measure) : formatMeasure(measure)
  return column?.align === 'left' && column.unit === undefined ? formatAmount(measure) : formatDigits(measure)
}

/** What must be said of a number: its caution, or why there is none. An interval column leaves that to its number. */
function noteOf(cell: Cell): string | undefined {
  if (cell.type !== 'measure') return undefined
  const {measure} = cell
  if (!isDefined(measure)) return asSentence(`not defined, because ${measure.notDefined}`)
  return measure.caution === undefined ? undefined : asSentence(measure.caution)
}

function markOf(note: string, notes: TableNote[]): string | undefined {
  if (note === '') return undefined
  const known = notes.find(({text: other, mark}) => other === note && mark !== undefined)
  if (known !== undefined) return known.mark
  const mark = letters(notes.filter((other) => other.mark !== undefined).length)
  notes.push({mark, text: note})
  return mark
}

/** a to z, then aa, ab and so on. */
function letters(index: number): string {
  const last = String.fromCharCode(97 + (index % 26))
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last
}

function text(value: string): PhrasingContent[] {
  return value === '' ? [] : [{type: 'text', value}]
}
