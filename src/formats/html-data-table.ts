import type {Element} from 'hast'
import {h} from 'hastscript'
import {formatPlain} from '../model/format-number.ts'
import type {FigureData} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import {alignDecimals} from './align-decimals.ts'
import {classOf} from './class-of.ts'
import {type KeepRows, plainContent} from './html-rows.ts'

/** The numbers behind a figure as a plain table, with the id of its caption. */
export function htmlDataTable(
  {columns, rows}: FigureData,
  caption: string,
  captionId: string,
  keepRows: KeepRows
): Element {
  const words = rows.map((row) => columns.map((_, index) => cellWords(row[index])))
  const isNumber = columns.map((_, index) => rows.every((row) => typeof row[index] !== 'string'))
  const padding = columns.map((_, index) =>
    isNumber[index] ? alignDecimals(words.map((row) => row[index] ?? '')) : []
  )
  return h('table', [
    h('caption', {id: captionId}, caption),
    h('thead', [
      h(
        'tr',
        columns.map((head, index) => h('th', {scope: 'col', ...classOf('number', isNumber[index])}, head))
      )
    ]),
    keepRows(
      'tbody',
      words.map((row, rowIndex) =>
        row.map((text, index) => ({
          tag: 'td',
          className: isNumber[index] ? 'number' : '',
          content: plainContent(text),
          padding: padding[index]?.[rowIndex] ?? ''
        }))
      )
    )
  ])
}

function cellWords(value: string | number | null | undefined): string {
  if (typeof value === 'number') return formatPlain(value)
  return value === null || value === undefined ? '–' : plainText(value)
}
