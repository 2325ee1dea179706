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

/** Turns phrasing into elements. */
type Phrase = (children: readonly PhrasingContent[]) => ElementContent[]

/** A longer table than this breaks over pages when printed; a shorter one is kept together. */
const mostRowsKeptTogether = 24

/** A cell with more characters than this holds a sentence. */
const longestLabel = 40

/** A table that needs more characters than this, side by side, may be wider than a telephone. */
const widestOnTelephone = 34

/** A table that needs more characters than this is set smaller in print, to stay on an upright page. */
const widestInFullSize = 96

/** A table that needs more characters than this is printed on a page laid sideways. */
const widestUpright = 124

/** A table that needs more characters than this is set in the smallest type that can be read, on such a page. */
const widestSideways = 185

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
    h('thead', [h('tr', printed.columns.map(headCell))]),
    h('tbody', bodyRows(printed, printed.rows, phrase)),
    ...(printed.foot.length > 0 ? [h('tfoot', bodyRows(printed, printed.foot, phrase))] : [])
  ])
  const width = widthInCharacters(printed)
  const size = printSize(width)
  const className = ['table-block', ...size]
  return h('div', {id, className}, [
    width > widestOnTelephone ? scrollBox(grid, captionId) : grid,
    ...below(printed, name, namesFile)
  ])
}

/** How a table is printed so that nothing of it is cut. */
function printSize(width: number): string[] {
  if (width > widestSideways) return ['broad', 'vast']
  if (width > widestUpright) return ['broad']
  return width > widestInFullSize ? ['dense'] : []
}

/** A box that a wide table moves sideways in, by finger, wheel and arrow keys. */
export function scrollBox(content: Element, labelledBy: string): Element {
  return h('div.scroll', {role: 'region', tabIndex: 0, ariaLabelledBy: [labelledBy]}, content)
}

function headCell({head, unit, align}: PrintedTable['columns'][number]): Element {
  return h('th', {scope: 'col', ...classOf('number', align === 'right')}, [
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
    h(
      'tr',
      cells.map((cell, index) => {
        const kind = kinds[index] ?? {}
        const content = cellContent(cell, padding[index]?.[offset + rowIndex] ?? '', phrase)
        return isRowHead(printed, index) ? h('th', {scope: 'row', ...kind}, content) : h('td', kind, content)
      })
    )
  )
}

/** Numbers stand below each other; sentences need room. */
function columnClass({columns, rows}: PrintedTable, index: number): Properties {
  if (columns[index]?.align === 'right') return classOf('number', true)
  return classOf(
    'words',
    rows.some((cells) => cellWords(cells[index]).length > longestLabel)
  )
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
    notes.map(({mark, text}) => h('li', [h('sup', mark), ' ', text]))
  )
  return [...(notes.length > 0 ? [list] : []), ...(namesFile || rows.length < rowsInAll ? [data] : [])]
}

/** What a table needs at least, in characters: the longest word of each column, or number, and the space between. */
function widthInCharacters({columns, rows}: PrintedTable): number {
  return columns.reduce((sum, {head, unit = '', align}, index) => {
    const cells = rows.map((row) => cellWords(row[index]))
    const words = [head, unit, ...cells].flatMap((text) => text.split(/\s/))
    const longest = align === 'right' ? [...words, ...cells] : words
    return sum + 3 + longest.reduce((most, text) => Math.max(most, text.length), 0)
  }, 0)
}

function cellWords(cell: PrintedCell | undefined): string {
  return cell === undefined ? '' : wordsOf(cell.children)
}
