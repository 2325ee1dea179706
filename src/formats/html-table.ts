import type {Element, ElementContent} from 'hast'
import {h} from 'hastscript'
import type {PhrasingContent} from 'mdast'
import {toString as wordsOf} from 'mdast-util-to-string'
import type {TableBlock} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import {isRowHead, type PrintedCell, type PrintedTable, printTable} from '../report/print-table.ts'
import {alignDecimals} from './align-decimals.ts'
import {anchorName} from './anchor-name.ts'
import {classOf} from './class-of.ts'
import type {ColumnMeasure} from './column-widths.ts'
import {columnMeasures, printSize} from './html-print-size.ts'
import {contentOf, type KeepRows, plainContent, type RowCell} from './html-rows.ts'

/** Turns phrasing into elements. */
type Phrase = (children: readonly PhrasingContent[]) => ElementContent[]

/** A longer table than this breaks over pages when printed; a shorter one is kept together. */
const mostRowsKeptTogether = 10

/** A cell with more characters than this holds a sentence. */
const longestLabel = 40

/** A cell with at most so many characters stays on one line on a screen, where a wide table can be moved sideways. */
const shortLabel = 24

/** Ems of table text that a telephone 360 pixels wide has room for. */
const telephone = 22

/** Space at both sides of a column together, in the same ems. */
const columnSpace = 1.28

/** A table in words, each cell's read once. */
interface Grid extends PrintedTable {
  /** Of the rows, then of the foot. */
  readonly words: readonly (readonly string[])[]
  /** Classes of each column's cells. */
  readonly classNames: readonly string[]
}

/** What a figure or a table is made with, beside itself. */
export interface TableTools {
  readonly phrase: Phrase
  readonly keepRows: KeepRows
}

/**
 * A numbered table with its caption, its notes, and the way to its data. A leaflet for one reader has no files beside
 * it and `namesFile` is false, unless the file is all there is.
 */
export function htmlTable(node: TableBlock, {phrase, keepRows}: TableTools, namesFile: boolean): Element {
  const {name, number, table, children} = node
  const id = anchorName('table', name)
  const printed = printTable(table)
  const caption = [h('span.number-label', `Table ${number}`), ' ', ...phrase(children)]
  if (printed.rows.length === 0) {
    return h('div.table-block', {id}, [h('p.caption', caption), h('p.empty', plainText(table.empty))])
  }
  const captionId = `caption_${id}`
  const grid = gridOf(printed)
  const cells = bodyCells(grid, phrase)
  const foot = cells.slice(printed.rows.length)
  const element = h('table', classOf('long', printed.rows.length > mostRowsKeptTogether), [
    h('caption', {id: captionId}, [h('span.held', caption)]),
    h('thead', [
      h(
        'tr',
        printed.columns.map((_, index) => headCell(grid, index))
      )
    ]),
    keepRows('tbody', cells.slice(0, printed.rows.length)),
    ...(foot.length > 0 ? [keepRows('tfoot', foot)] : [])
  ])
  const measures = columnMeasures(printed)
  const className = ['table-block', ...printSize(measures)]
  const isWide = widthOnScreen(grid, measures) > telephone
  return h('div', {id, className}, [
    isWide ? scrollBox(element, captionId) : element,
    ...below(printed, name, namesFile)
  ])
}

/** A box that a wide table moves sideways in, by finger, wheel and arrow keys. */
export function scrollBox(content: Element, labelledBy: string): Element {
  return h('section.scroll', {tabIndex: 0, ariaLabelledBy: [labelledBy]}, content)
}

function gridOf(printed: PrintedTable): Grid {
  const cells = [...printed.rows, ...printed.foot]
  const words = cells.map((row) => row.map(({children}) => wordsOf(children)))
  const classNames = printed.columns.map(({align}, index) => {
    if (align !== 'right') return labelClass(longest(words, index))
    return cells.some((row) => row[index]?.mark !== undefined) ? 'number marked' : 'number'
  })
  return {...printed, words, classNames}
}

/** Numbers stand below each other; labels stay on one line; sentences need room. */
function labelClass(length: number): string {
  if (length > longestLabel) return 'words'
  return length > 0 && length <= shortLabel ? 'name' : ''
}

function longest(words: Grid['words'], index: number): number {
  return words.reduce((most, row) => Math.max(most, row[index]?.length ?? 0), 0)
}

function headCell({columns, classNames}: Grid, index: number): Element {
  const {head, unit, align} = columns[index]!
  return h('th', {scope: 'col', ...(align === 'right' && {className: classNames[index]?.split(' ')})}, [
    head,
    ...(unit === undefined ? [] : [' ', h('span.unit', unit)])
  ])
}

/** The cells of the rows, then of the foot. */
function bodyCells(grid: Grid, phrase: Phrase): RowCell[][] {
  const {columns, rows, foot, words, classNames} = grid
  const padding = columns.map(({align}, index) =>
    align === 'right' ? alignDecimals(words.map((row) => row[index] ?? '')) : []
  )
  const areHeads = columns.map((_, index) => isRowHead(grid, index))
  return [...rows, ...foot].map((cells, row) =>
    cells.map((cell, index) => ({
      // A row head without words would be announced as nothing.
      tag: areHeads[index] && cell.children.length > 0 ? 'th' : 'td',
      className: classNames[index] ?? '',
      content: cellContent(cell, phrase),
      padding: padding[index]?.[row] ?? ''
    }))
  )
}

function cellContent({children, mark}: PrintedCell, phrase: Phrase): string {
  const content = phrase(children)
  const [only, ...more] = content
  if (mark === undefined && more.length === 0 && (only === undefined || only.type === 'text'))
    return plainContent(only?.value ?? '')
  return contentOf(mark === undefined ? content : [...content, h('sup.mark', mark)])
}

function below({notes, rows, rowsInAll}: PrintedTable, name: string, namesFile: boolean): Element[] {
  const file = `tables/${name}.csv`
  const link = h('a', {href: encodeURI(file)}, file)
  const data =
    rows.length < rowsInAll
      ? h('p.data-link', [`The first ${rows.length} of ${rowsInAll} rows. All of them: `, link])
      : h('p.data-link', ['Data: ', link])
  const list = h(
    'ul.table-notes',
    notes.map(({mark, text}) => h('li', mark === undefined ? text : [h('sup', mark), ' ', text]))
  )
  return [...(notes.length > 0 ? [list] : []), ...(namesFile || rows.length < rowsInAll ? [data] : [])]
}

/** Width that a table takes on a screen at least, in ems of its type. */
function widthOnScreen({words}: Grid, measures: readonly ColumnMeasure[]): number {
  return measures.reduce((sum, {least, most}, index) => {
    const isOneLine = longest(words, index) <= shortLabel
    return sum + (isOneLine ? most : least) + columnSpace
  }, 0)
}
