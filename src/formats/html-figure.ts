import type {Element, ElementContent} from 'hast'
import {h} from 'hastscript'
import type {PhrasingContent} from 'mdast'
import {formatPlain} from '../model/format-number.ts'
import type {FigureBlock, FigureData} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import {alignDecimals} from './align-decimals.ts'
import {anchorName} from './anchor-name.ts'
import {scrollBox} from './html-table.ts'

/** The data of a figure stand on the page up to this many rows; of larger ones there is the file. */
const mostDataRows = 60

/**
 * A numbered figure: its picture (put in later, where `data-figure` names it), its caption, and its data one click
 * away. A figure that could not be drawn says why.
 */
export function htmlFigure(
  node: FigureBlock,
  phrase: (children: readonly PhrasingContent[]) => ElementContent[]
): Element {
  const {name, number, figure, children} = node
  const id = anchorName('figure', name)
  const captionId = `${id}-caption`
  const caption = h('figcaption', {id: captionId}, [
    h('span.number-label', `Figure ${number}`),
    ' ',
    ...phrase(children)
  ])
  if (figure.spec === undefined) {
    const reason = `Not drawn, because ${plainText(figure.notDrawn ?? 'there is nothing to draw')}.`
    return h('figure', {id}, [h('p.empty', reason), caption])
  }
  const plate = h('div.plate', {role: 'group', tabIndex: 0, ariaLabelledBy: [captionId], dataFigure: name})
  return h('figure', {id}, [plate, caption, data(name, number, figure.data)])
}

function data(name: string, number: number, {columns, rows}: FigureData): Element {
  const files = h('p', [
    h('a', {href: encodeURI(`figures/${name}.csv`)}, 'Numbers (CSV)'),
    ' ',
    h('a', {href: encodeURI(`figures/${name}.svg`)}, 'Picture (SVG)')
  ])
  const summary = h('summary', `Data behind Figure ${number}`)
  if (rows.length === 0 || rows.length > mostDataRows) return h('details.data', [summary, files])
  const captionId = `${anchorName('figure', name)}-data`
  const isNumber = columns.map((_, index) => rows.every((row) => typeof row[index] !== 'string'))
  const cell = (value: string | number | null | undefined) =>
    typeof value === 'number'
      ? formatPlain(value)
      : value === null || value === undefined
        ? '–'
        : plainText(value)
  const padding = columns.map((_, index) =>
    isNumber[index] ? alignDecimals(rows.map((row) => cell(row[index]))) : []
  )
  const table = h('table', [
    h('caption', {id: captionId}, `Data behind Figure ${number}`),
    h(
      'thead',
      h(
        'tr',
        columns.map((head, index) =>
          h('th', {scope: 'col', className: isNumber[index] ? ['number'] : []}, head)
        )
      )
    ),
    h(
      'tbody',
      rows.map((row, rowIndex) =>
        h(
          'tr',
          columns.map((_, index) => {
            const space = padding[index]?.[rowIndex] ?? ''
            const number = isNumber[index] ? ['number'] : []
            return h('td', {className: number}, [
              cell(row[index]),
              ...(space === '' ? [] : [h('span', {ariaHidden: 'true'}, space)])
            ])
          })
        )
      )
    )
  ])
  return h('details.data', [summary, files, scrollBox(table, captionId)])
}
