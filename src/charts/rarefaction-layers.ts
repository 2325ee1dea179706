import {inkTones} from '../model/ink.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import type {RarefactionLine, RarefactionPlot} from './rarefaction-lines.ts'

export interface PlotAxes {
  /** Titles; null for none. */
  readonly x: string | null
  readonly y: string | null
  /** Whether the axis of individuals bears its numbers. */
  readonly sizes: boolean
}

/** Axes, lines and symbols of one plot: each line is strong up to the catch, where its symbol stands, then thin. */
export function curveLayers(
  lines: readonly RarefactionLine[],
  plot: RarefactionPlot,
  axes: PlotAxes
): readonly Record<string, unknown>[] {
  const {width, height, largestSize, largestValue} = plot
  const encoding = {
    x: {
      field: 'size',
      type: 'quantitative',
      title: axes.x,
      scale: {domain: [0, largestSize], nice: false},
      axis: {grid: false, tickCount: width > 300 ? 6 : 2, format: ',d', labels: axes.sizes}
    },
    y: {
      field: 'value',
      type: 'quantitative',
      title: axes.y,
      scale: {domain: [0, largestValue], nice: false},
      axis: {tickCount: height > 100 ? 5 : 2, format: ',~r'}
    },
    color: habitatColour
  }
  const line = (part: 'within' | 'beyond', strokeWidth: number) => ({
    data: {
      values: lines.flatMap((each, index) =>
        each[part].map(({size, value}) => ({size, value, index, ...habitatFields(each.style)}))
      )
    },
    mark: {type: 'line', strokeWidth, strokeCap: 'butt'},
    encoding: {...encoding, detail: {field: 'index', type: 'nominal'}}
  })
  return [
    line('beyond', 0.9),
    line('within', 2.4),
    {
      data: {values: lines.map(({atCatch, style}) => ({...atCatch, ...habitatFields(style)}))},
      mark: {type: 'point', filled: true, size: 90, stroke: inkTones.paper.light, strokeWidth: 1},
      encoding: {...encoding, color: undefined, fill: habitatColour, shape: habitatShape}
    }
  ]
}
