import {inkTones} from '../model/ink.ts'
import type {CurveLine, CurvePlot} from './curve-lines.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'

export interface PlotAxes {
  /** Titles; null for none. */
  readonly x: string | null
  readonly y: string | null
  /** Whether the horizontal axis bears its numbers. */
  readonly numbers: boolean
  /** How those are written, in the number format of the chart language. */
  readonly format: string
}

/** Axes, bands, lines and symbols of one plot: each line is strong where the catch itself tells, and thin beyond it. */
export function curveLayers(
  lines: readonly CurveLine[],
  plot: CurvePlot,
  axes: PlotAxes
): readonly Record<string, unknown>[] {
  const marks = lines.map(({mark: {at, value}, style}) => ({at, value, ...habitatFields(style)}))
  return [...lineLayers(lines, plot, axes), symbolLayer(marks, plot, axes)]
}

/** A symbol of a habitat at each place given. */
export function symbolLayer(
  values: readonly object[],
  plot: CurvePlot,
  axes: PlotAxes
): Record<string, unknown> {
  return {
    data: {values},
    mark: {type: 'point', filled: true, size: 90, stroke: inkTones.paper.light, strokeWidth: 1},
    encoding: {...positions(plot, axes), fill: habitatColour, shape: habitatShape}
  }
}

/** The two axes of a plot, by the fields `at` and `value` of a datum. */
export function positions(plot: CurvePlot, axes: PlotAxes) {
  const {width, height, from, to, largestValue} = plot
  return {
    x: {
      field: 'at',
      type: 'quantitative',
      title: axes.x,
      scale: {domain: [from, to], nice: false, zero: false},
      axis: {grid: false, tickCount: width > 300 ? 6 : 2, format: axes.format, labels: axes.numbers}
    },
    y: {
      field: 'value',
      type: 'quantitative',
      title: axes.y,
      scale: {domain: [0, largestValue], nice: false},
      axis: {tickCount: height > 100 ? 5 : 2, format: ',~r'}
    }
  } as const
}

/** Axes, bands and lines of one plot. */
export function lineLayers(
  lines: readonly CurveLine[],
  plot: CurvePlot,
  axes: PlotAxes
): readonly Record<string, unknown>[] {
  const encoding = {...positions(plot, axes), color: habitatColour}
  const marked = lines.map((line, index) => ({...line, fields: {index, ...habitatFields(line.style)}}))
  const detail = {field: 'index', type: 'nominal'}
  const band = marked.flatMap(({strong, thin, fields}) =>
    [...strong, ...thin].flatMap((point) => (point.low === undefined ? [] : [{...point, ...fields}]))
  )
  const line = (part: 'strong' | 'thin', strokeWidth: number) => ({
    data: {
      values: marked.flatMap(({fields, ...each}) => each[part].map(({at, value}) => ({at, value, ...fields})))
    },
    mark: {type: 'line', strokeWidth, strokeCap: 'butt'},
    encoding: {...encoding, detail}
  })
  return [
    ...(band.length === 0
      ? []
      : [
          {
            data: {values: band},
            mark: {type: 'area', opacity: 0.14, clip: true},
            encoding: {
              ...encoding,
              y: {...encoding.y, field: 'low', stack: null},
              y2: {field: 'high'},
              detail
            }
          }
        ]),
    line('thin', 0.9),
    line('strong', 2.4)
  ]
}
