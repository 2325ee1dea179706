import {inkTones} from '../model/ink.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import type {LabelledRow} from './row-labels.ts'
import {boldLetterWidth, letterWidth, lineMark, textLines} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

/** How small multiples, one panel for each habitat, are set out on a width of about 640 pixels. */
export interface PanelGrid {
  readonly columns: number
  /** Size of the plot of one panel, in pixels, without axes and heading. */
  readonly width: number
  readonly height: number
  /** Whether no other panel stands below this one, so that it bears the title of its horizontal axis. */
  isLowest(panel: number): boolean
}

export function panelGrid(panels: number): PanelGrid {
  const columns = panels === 4 ? 2 : Math.min(3, panels)
  const [width, height] = columns <= 1 ? [560, 230] : columns === 2 ? [270, 170] : [164, 150]
  return {columns, width, height, isLowest: (panel) => panel + columns >= panels}
}

/** Layers that name a panel above its plot, with the habitat's own symbol and colour. */
export function panelHeading({label, style}: LabelledRow, width: number): readonly Record<string, unknown>[] {
  const lines = textLines(wrapLabel(label, Math.floor((width - 15) / boldLetterWidth), 3), 'bottom')
  return [
    {
      data: {values: [{y: -11 + (lines[0]?.dy ?? 0), ...habitatFields(style)}]},
      mark: {type: 'point', filled: true, size: 64, x: 5, y: {expr: 'datum.y'}},
      encoding: {color: habitatColour, shape: habitatShape}
    },
    {
      data: {values: lines},
      mark: {...lineMark, align: 'left', baseline: 'middle', fontWeight: 'bold', x: 15, y: -11},
      encoding: {text: {field: 'text', type: 'nominal'}}
    }
  ]
}

/** A panel's words where it has nothing to draw. */
export function panelWords(text: string, {width, height}: PanelGrid): Record<string, unknown> {
  return {
    data: {values: textLines(wrapLabel(text, Math.floor(width / letterWidth), 3), 'middle')},
    mark: {
      ...lineMark,
      align: 'center',
      baseline: 'middle',
      color: inkTones.muted.light,
      x: width / 2,
      y: height / 2
    },
    encoding: {text: {field: 'text', type: 'nominal'}}
  }
}

/** The panels together, under a line that says what their vertical axes measure. */
export function panelFigure(
  verticalTitle: string,
  panels: readonly object[],
  {columns}: PanelGrid
): Record<string, unknown> {
  return {
    title: {
      text: verticalTitle,
      fontWeight: 'normal',
      fontSize: 12,
      color: inkTones.muted.light,
      anchor: 'start',
      offset: 14
    },
    concat: panels,
    columns,
    spacing: {row: 18, column: 10}
  }
}
