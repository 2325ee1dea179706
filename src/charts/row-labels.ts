import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {lineHeight, lineMark, textLines} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

/** Room that the labels take to the left of the plot, in pixels. */
export const rowLabelWidth = 158

const charactersPerLine = 22
const mostLines = 4

/** A row of a chart with one row for each habitat, in the order of the study file. */
export interface LabelledRow {
  readonly label: string
  /** Place of the habitat in the palette. */
  readonly style: number
}

/** Height of each row in pixels: at least the given one, or more where a label needs it. */
export function rowHeight(rows: readonly LabelledRow[], atLeast: number): number {
  const lines = rows.map(({label}) => wrapLabel(label, charactersPerLine, mostLines).split('\n').length)
  return Math.max(atLeast, Math.max(...lines) * lineHeight + 10)
}

/** Encoding of the row of each datum, by its field `row`, counted from 0. */
export const rowPosition = {field: 'row', type: 'ordinal', axis: null} as const

/** Layers that name each row to the left of the plot, with the habitat's own symbol and colour. */
export function rowLabels(rows: readonly LabelledRow[]): readonly Record<string, unknown>[] {
  return [
    {
      data: {values: rows.map(({style}, row) => ({row, ...habitatFields(style)}))},
      mark: {type: 'point', filled: true, size: 64, x: 6 - rowLabelWidth},
      encoding: {y: rowPosition, color: habitatColour, shape: habitatShape}
    },
    {
      data: {
        values: rows.flatMap(({label}, row) =>
          textLines(wrapLabel(label, charactersPerLine, mostLines), 'middle').map((line) => ({row, ...line}))
        )
      },
      mark: {...lineMark, align: 'left', baseline: 'middle', x: 18 - rowLabelWidth},
      encoding: {y: rowPosition, text: {field: 'text', type: 'nominal'}}
    }
  ]
}
