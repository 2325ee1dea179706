import type {Element, ElementContent, Properties} from 'hast'
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

/**
 * A numbered table with its caption, its notes, and the way to its data. A leaflet for one reader has no files beside
 * it and `namesFile` is false, unless the file is all there is.
 */
export function htmlTable(node: TableBlock, phrase: Phrase, namesFile: boolean): Element {
  const {name, number, table, children} = node
  const id = anchorName('table', name)
  const printed = printTable(table)
  const caption = [h('span.number-label', `Table ${number}`), ' ', ...phrase(children)]
  if (printed.rows.length === 0) {
    return h('div.table-block', {id}, [h('p.caption', caption), h('p.empty', plainText(table.empty))])
  }
  const captionId = `${id}-caption`
  const grid = h('table', classOf('long', printed.rows.length > mostRowsKeptTogether), [
    h('caption', {id: captionId}, [h('span.held', caption)]),
    h('thead', [
      h(
        'tr',
        printed.columns.map((_, index) => headCell(printed, index))
      )
    ]),
    h('tbody', bodyRows(printed, printed.rows, phrase)),
    ...(printed.foot.length > 0 ? [h('tfoot', bodyRows(printed, printed.foot, phrase))] : [])
  ])
  const measures = columnMeasures(printed)
  const className = ['table-block', ...printSize(measures)]
  const isWide = widthOnScreen(printed, measures) > telephone
  return h('div', {id, className}, [
    isWide ? scrollBox(grid, captionId) : grid,
    ...below(printed, name, namesFile)
  ])
}

/** A box that a wide table moves sideways in, by finger, wheel and arrow keys. */
export function scrollBox(content: Element, labelledBy: string): Element {
  return h('section.scroll', {tabIndex: 0, ariaLabelledBy: [labelledBy]}, content)
}

function headCell(printed: PrintedTable, index: number): Element {
  const {head, unit, align} = printed.columns[index]!
  return h('th', {scope: 'col', ...(align === 'right' && columnClass(printed, index))}, [
    head,
    ...(unit === undefined ? [] : [' ', h('span.unit', unit)])
  ])
}

function bodyRows(printed: PrintedTable, rows: PrintedTable['rows'], phrase: Phrase): Element[] {
  const padding = printed.columns.map(({align}, index) =>
    align === 'right'
      ? alignDecimals([...printed.rows, ...printed.foot].map((cells) => cellWords(cells[index])))
      : []
  )
  const kinds = printed.columns.map((_, index) => columnClass(printed, index))
  const offset = rows === printed.foot ? printed.rows.length : 0
  return rows.map((cells, rowIndex) =>
    element(
      'tr',
      {},
      cells.map((cell, index) => {
        const kind = kinds[index] ?? {}
        const content = cellContent(cell, padding[index]?.[offset + rowIndex] ?? '', phrase)
        // A row head without words would be announced as nothing.
        const isHead = isRowHead(printed, index) && cell.children.length > 0
        return isHead ? element('th', {scope: 'row', ...kind}, content) : element('td', kind, content)
      })
    )
  )
}

/** What h() makes, without looking up the name of each property: a record has tens of thousands of cells. */
function element(tagName: string, properties: Properties, children: ElementContent[]): Element {
  return {type: 'element', tagName, properties, children}
}

/** Numbers stand below each other; labels stay on one line; sentences need room. */
function columnClass(printed: PrintedTable, index: number): Properties {
  if (printed.columns[index]?.align === 'right') {
    const isMarked = [...printed.rows, ...printed.foot].some((cells) => cells[index]?.mark !== undefined)
    return {className: ['number', ...(isMarked ? ['marked'] : [])]}
  }
  const longest = longestCell(printed, index)
  return longest > 0 && longest <= shortLabel
    ? classOf('name', true)
    : classOf('words', longest > longestLabel)
}

function longestCell({rows, foot}: PrintedTable, index: number): number {
  return [...rows, ...foot].reduce((most, cells) => Math.max(most, cellWords(cells[index]).length), 0)
}

function cellContent({children, mark}: PrintedCell, padding: string, phrase: Phrase): ElementContent[] {
  return [
    ...phrase(children),
    ...(mark === undefined ? [] : [h('sup.mark', mark)]),
    ...(padding === '' ? [] : [h('span', {ariaHidden: 'true'}, padding)])
  ]
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
function widthOnScreen(printed: PrintedTable, measures: readonly ColumnMeasure[]): number {
  return measures.reduce((sum, {least, most}, index) => {
    const isOneLine = longestCell(printed, index) <= shortLabel
    return sum + (isOneLine ? most : least) + columnSpace
  }, 0)
}

function cellWords(cell: PrintedCell | undefined): string {
  return cell === undefined ? '' : wordsOf(cell.children)
}
