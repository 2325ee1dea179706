import type {Element} from 'hast'
import {h} from 'hastscript'
import type {FigureBlock, FigureData} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import {anchorName} from './anchor-name.ts'
import {htmlDataTable} from './html-data-table.ts'
import type {KeepRows} from './html-rows.ts'
import {scrollBox, type TableTools} from './html-table.ts'

/** The data of a figure stand on the page up to this many rows; of larger ones there is the file. */
const mostDataRows = 60

/**
 * A numbered figure: its picture (put in later, where `data-figure` names it), its caption, and its data one click
 * away. A figure that could not be drawn says why.
 */
export function htmlFigure(node: FigureBlock, {phrase, keepRows}: TableTools): Element {
  const {name, number, figure, children} = node
  const id = anchorName('figure', name)
  const captionId = `caption_${id}`
  const label = h('span.number-label', `Figure ${number}`)
  const caption = h('figcaption', {id: captionId}, [label, ' ', ...phrase(children)])
  if (figure.spec === undefined) {
    const reason = `Not drawn, because ${plainText(figure.notDrawn ?? 'there is nothing to draw')}.`
    return h('div.figure-block', h('figure', {id}, [h('p.empty', reason), caption]))
  }
  const plate = h('div.plate', {role: 'group', tabIndex: 0, ariaLabelledBy: [captionId], dataFigure: name})
  return h('div.figure-block', [
    h('figure', {id}, [plate, caption]),
    dataBehind(name, number, figure.data, keepRows)
  ])
}

function dataBehind(name: string, number: number, data: FigureData, keepRows: KeepRows): Element {
  const title = `Data behind Figure ${number}`
  const files = h('p', [
    h('a', {href: encodeURI(`figures/${name}.csv`)}, 'Numbers (CSV)'),
    ' ',
    h('a', {href: encodeURI(`figures/${name}.svg`)}, 'Picture (SVG)')
  ])
  const captionId = `data_${anchorName('figure', name)}`
  const isShown = data.rows.length > 0 && data.rows.length <= mostDataRows
  const shown = isShown ? [scrollBox(htmlDataTable(data, title, captionId, keepRows), captionId)] : []
  return h('details.data', [h('summary', title), files, ...shown])
}
