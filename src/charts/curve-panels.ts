import {inkTones} from '../model/ink.ts'
import {curveLayers} from './curve-layers.ts'
import {allPoints, type CurveLine, type CurvePlot, type DiversityOrder, extentOf} from './curve-lines.ts'
import {wordLayers} from './curve-words.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import type {LabelledRow} from './row-labels.ts'
import {lineMark, textLines} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

export const orderPanels: readonly {
  readonly order: DiversityOrder
  readonly name: string
  readonly unit: string
}[] = [
  {order: 0, name: 'All species', unit: 'species'},
  {order: 1, name: 'Common species', unit: 'effective species'},
  {order: 2, name: 'Dominant species', unit: 'effective species'}
]

/** More lines than this in one plot cross and hide each other; then each habitat has plots of its own. */
export const mostLinesInOnePlot = 5

export const curveParts = {strong: 'within the catch', thin: 'beyond the catch'} as const

/** Where the names of habitats begin, in pixels from the first plot of their row. */
export const rowHeadingLeft = -150

/** The horizontal axis that all plots of a picture share. */
export interface SharedAxis {
  readonly title: string
  readonly from: number
  readonly to: number
  readonly format: string
  /** Where upright lines stand. */
  readonly rules?: readonly number[]
}

/** Curves of orders 0, 1 and 2, by order. */
export type CurvesByOrder = readonly (readonly CurveLine[])[]

/** All habitats in each of three plots, one above the other, so that they share one horizontal axis. */
export function curvesTogether(curves: CurvesByOrder, axis: SharedAxis): Record<string, unknown> {
  return {
    vconcat: orderPanels.map(({order, name, unit}, index) => {
      const lines = curves[order] ?? []
      const plot: CurvePlot = {
        width: 455,
        height: order === 0 ? 190 : 130,
        from: axis.from,
        to: axis.to,
        largestValue: extentOf(allPoints(lines)).largestValue
      }
      const x = index === orderPanels.length - 1 ? axis.title : null
      return {
        width: plot.width,
        height: plot.height,
        title: {text: name, offset: 4},
        layer: [
          ...uprightRules(axis),
          ...curveLayers(lines, plot, {x, y: unit, numbers: true, format: axis.format}),
          ...wordLayers(lines, plot, {
            habitats: true,
            parts: index === 0 ? curveParts : undefined,
            roomRight: 146
          })
        ]
      }
    }),
    spacing: 16
  }
}

/** A row of three plots for each habitat; all plots of an order have the same axes. */
export function curvesApart(
  habitats: readonly LabelledRow[],
  curves: CurvesByOrder,
  axis: SharedAxis
): Record<string, unknown> {
  return {
    concat: habitats.flatMap((habitat, row) =>
      orderPanels.map(({order, name, unit}, column) => {
        const all = curves[order] ?? []
        const plot: CurvePlot = {
          width: 136,
          height: habitats.length > 8 ? 62 : 88,
          from: axis.from,
          to: axis.to,
          largestValue: extentOf(allPoints(all)).largestValue
        }
        const lines = all.filter(({style}) => style === habitat.style)
        const last = row === habitats.length - 1
        const parts = row === 0 && column === 0 ? curveParts : undefined
        return {
          width: plot.width,
          height: plot.height,
          layer: [
            ...uprightRules(axis),
            ...curveLayers(lines, plot, {
              x: last ? axis.title : null,
              y: null,
              numbers: last,
              format: axis.format
            }),
            ...wordLayers(lines, plot, {habitats: false, parts, roomRight: 0}),
            ...(column === 0 ? rowHeading(habitat, plot.height) : []),
            ...(row === 0 ? columnHeading(name, unit) : [])
          ]
        }
      })
    ),
    columns: orderPanels.length,
    spacing: {row: 10, column: 12}
  }
}

function uprightRules({rules = [], from, to}: SharedAxis): Record<string, unknown>[] {
  return rules.map((at) => ({
    data: {values: [{at}]},
    mark: {type: 'rule', color: inkTones.muted.light, strokeWidth: 0.75},
    encoding: {x: {field: 'at', type: 'quantitative', scale: {domain: [from, to], nice: false, zero: false}}}
  }))
}

/** The habitat's name and symbol to the left of its row, clear of the labels of the vertical axis. */
function rowHeading({label, style}: LabelledRow, height: number): Record<string, unknown>[] {
  return [
    {
      data: {values: [habitatFields(style)]},
      mark: {type: 'point', filled: true, size: 64, x: rowHeadingLeft, y: height / 2},
      encoding: {color: habitatColour, shape: habitatShape}
    },
    {
      data: {values: textLines(wrapLabel(label, 17, 4), 'middle')},
      mark: {...lineMark, align: 'left', baseline: 'middle', x: rowHeadingLeft + 12, y: height / 2},
      encoding: {text: {field: 'text', type: 'nominal'}}
    }
  ]
}

function columnHeading(name: string, unit: string): Record<string, unknown>[] {
  const line = (text: string, y: number, look: Record<string, unknown>) => ({
    data: {values: [{text}]},
    mark: {type: 'text', align: 'left', baseline: 'middle', x: 0, y, ...look},
    encoding: {text: {field: 'text', type: 'nominal'}}
  })
  return [line(name, -28, {fontWeight: 'bold', fontSize: 12}), line(unit, -13, {color: inkTones.muted.light})]
}
