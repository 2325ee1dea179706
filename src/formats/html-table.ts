import type {Element, ElementContent} from 'hast'
import {h} from 'hastscript'
import type {PhrasingContent} from 'mdast'
import {toString as wordsOf} from 'mdast-util-to-string'
import type {TableBlock} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import {isRowHead, type PrintedCell, type PrintedTable, printTable} from '../report/print-table.ts'
import {alignDecimals} from './align-decimals.ts'
import {anchorName} from './anchor-name.ts'

/** Turns phrasing into elements. */
type Phrase = (children: readonly PhrasingContent[]) => ElementContent[]

/** A longer table than this breaks over pages when printed; a shorter one is kept together. */
const mostRowsKeptTogether = 24

/** With more columns than this a table is printed on a page laid sideways. */
const mostColumnsUpright = 9

/** A numbered table with its caption, its notes, and the way to its data. */
export function htmlTable(node: TableBlock, phrase: Phrase): Element {
  const {name, number, table, children} = node
  const id = anchorName('table', name)
  const printed = printTable(table)
  const caption = [h('span.number-label', `Table ${number}`), ' ', ...phrase(children)]
  if (printed.rows.length === 0) {
    return h('div.table-block', {id}, [h('p.caption', caption), h('p.empty', plainText(table.empty))])
  }
  const captionId = `${id}-caption`
  const grid = h('table', {className: printed.rows.length > mostRowsKeptTogether ? ['long'] : []}, [
    h('caption', {id: captionId}, [h('span.held', caption)]),
    h('thead', [h('tr', printed.columns.map(headCell))]),
    h('tbody', bodyRows(printed, printed.rows, phrase)),
    ...(printed.foot.length > 0 ? [h('tfoot', bodyRows(printed, printed.foot, phrase))] : [])
  ])
  const className = ['table-block', ...(printed.columns.length > mostColumnsUpright ? ['broad'] : [])]
  return h('div', {id, className}, [isWide(printed) ? scrollBox(grid, captionId) : grid, ...below(printed, name)])
}

/** A box that a wide table moves sideways in, by finger, wheel and arrow keys. */
export function scrollBox(content: Element, labelledBy: string): Element {
  return h('div.scroll', {role: 'region', tabIndex: 0, ariaLabelledBy: [labelledBy]}, content)
}

function headCell({head, unit, align}: PrintedTable['columns'][number]): Element {
  const className = align === 'right' ? ['number'] : []
  return h('th', {scope: 'col', className}, [head, ...(unit === undefined ? [] : [' ', h('span.unit', unit)])])
}

function bodyRows(printed: PrintedTable, rows: PrintedTable['rows'], phrase: Phrase): Element[] {
  const padding = printed.columns.map(({align}, index) =>
    align === 'right' ? alignDecimals([...printed.rows, ...printed.foot].map((cells) => cellWords(cells[index]))) : []
  )
  const offset = rows === printed.foot ? printed.rows.length : 0
  return rows.map((cells, rowIndex) =>
    h('tr', cells.map((cell, index) => {
      const className = printed.columns[index]?.align === 'right' ? ['number'] : []
      const content = cellContent(cell, padding[index]?.[offset + rowIndex] ?? '', phrase)
      return isRowHead(printed, index) ? h('th', {scope: 'row', className}, content) : h('td', {className}, content)
    }))
  )
}

function cellContent({children, mark}: PrintedCell, padding: string, phrase: Phrase): ElementContent[] {
  return [
    ...phrase(children),
    ...(mark === undefined ? [] : [h('sup.mark', mark)]),
    ...(padding === '' ? [] : [h('span', {ariaHidden: 'true'}, padding)])
  ]
}

function below({notes, rows, rowsInAll}: PrintedTable, name: string): Element[] {
  const file = `tables/${name}.csv`
  const link = h('a', {href: encodeURI(file)}, file)
  const data = rows.length < rowsInAll
    ? h('p.data-link', [`The first ${rows.length} of ${rowsInAll} rows. All of them: `, link])
    : h('p.data-link', ['Data: ', link])
  const list = h('ul.table-notes', notes.map(({mark, text}) => h('li', [h('sup', mark), ' ', text])))
  return notes.length > 0 ? [list, data] : [data]
}

/** Whether a table may be wider than a telephone: by the longest word of each column, in characters. */
function isWide({columns, rows}: PrintedTable): boolean {
  const widths = columns.map(({head, unit = ''}, index) => {
    const words = [head, unit, ...rows.map((cells) => cellWords(cells[index]))]
    const longest = (text: string) => Math.max(0, ...text.split(/\s/).map((word) => word.length))
    return Math.max(...words.map(longest)) + 3
  })
  return columns.length > 4 || widths.reduce((sum, width) => sum + width, 0) > 34
}

function cellWords(cell: PrintedCell | undefined): string {
  return cell === undefined ? '' : wordsOf(cell.children)
}
