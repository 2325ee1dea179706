import {inkTones} from '../model/ink.ts'
import {lineHeight, lineMark} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

/** Characters of a note in a line over the whole width of a picture. */
const charactersPerLine = 104

/**
 * The picture with notes below it, each beginning a line; the picture alone where there are none.
 *
 * @param left where the lines begin, in pixels from the left edge of the plots
 */
export function withNotes(
  picture: Readonly<Record<string, unknown>>,
  notes: readonly string[],
  left: number
): Readonly<Record<string, unknown>> {
  if (notes.length === 0) return picture
  const lines = notes.flatMap((note) => wrapLabel(note, charactersPerLine, 4).split('\n'))
  const values = lines.map((text, index) => ({text, dy: index * lineHeight}))
  const words = {
    width: 1,
    height: lines.length * lineHeight,
    data: {values},
    mark: {
      ...lineMark,
      align: 'left',
      baseline: 'middle',
      color: inkTones.muted.light,
      x: left,
      y: lineHeight / 2
    },
    encoding: {text: {field: 'text', type: 'nominal'}}
  }
  return {vconcat: [picture, words], spacing: 14}
}
