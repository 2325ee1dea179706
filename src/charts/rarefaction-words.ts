import {inkTones} from '../model/ink.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {alongLine, type LabelToPlace, type Pixel, placeLabels} from './place-labels.ts'
import {type CurvePoint, endOf, type RarefactionLine, type RarefactionPlot} from './rarefaction-lines.ts'
import {letterWidth, lineHeight, lineMark, textLines} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

/** What a plot says in words, apart from its axes. */
export interface PlotWords {
  /** Whether each line bears its habitat's symbol and name at its end. */
  readonly habitats: boolean
  /** Whether the two parts of a line are named, once in a picture. */
  readonly parts: boolean
  /** Room to the right of the plot, in pixels, into which labels may reach. */
  readonly roomRight: number
}

interface Words extends LabelToPlace {
  readonly words: string
  /** Place of the habitat in the palette; absent for words that belong to no habitat. */
  readonly style?: number
}

/** Room for the symbol before a habitat's name. */
const symbolWidth = 13

/** The lettering of one plot, set where it covers no line and no other lettering. */
export function wordLayers(
  lines: readonly RarefactionLine[],
  plot: RarefactionPlot,
  {habitats, parts, roomRight}: PlotWords
): readonly Record<string, unknown>[] {
  const toPixel = ({size, value}: CurvePoint): Pixel => ({
    x: (size / plot.largestSize) * plot.width,
    y: plot.height - (value / plot.largestValue) * plot.height
  })
  const labels = [
    ...(habitats ? lines.map((line) => nameOf(line, toPixel(endOf(line)))) : []),
    ...(parts ? partNames(lines, toPixel) : [])
  ]
  const frame = {left: 2, right: plot.width + roomRight, top: -4, bottom: plot.height - 2}
  const places = placeLabels(labels, drawnPoints(lines, toPixel), frame)
  const placed = labels.flatMap((label, index) => {
    const place = places[index]
    return place === undefined ? [] : [{...label, ...place}]
  })
  const names = placed.filter(({style}) => style !== undefined)
  const others = placed.filter(({style}) => style === undefined)
  return [
    leaders(placed, plot),
    {
      data: {values: names.map(({left, middle, style = 0}) => ({left, middle, ...habitatFields(style)}))},
      mark: {
        type: 'point',
        filled: true,
        size: 45,
        x: {expr: 'datum.left + 4'},
        y: {expr: 'datum.middle'}
      },
      encoding: {color: habitatColour, shape: habitatShape}
    },
    lettering(names, {dx: symbolWidth}),
    lettering(others, {color: inkTones.muted.light})
  ]
}

function lettering(
  labels: readonly {readonly words: string; readonly left: number; readonly middle: number}[],
  look: Record<string, unknown>
): Record<string, unknown> {
  return {
    data: {
      values: labels.flatMap(({words, left, middle}) =>
        textLines(words, 'middle').map((line) => ({...line, left, middle}))
      )
    },
    mark: {
      ...lineMark,
      align: 'left',
      baseline: 'middle',
      x: {expr: 'datum.left'},
      y: {expr: 'datum.middle'},
      ...look
    },
    encoding: {text: {field: 'text', type: 'nominal'}}
  }
}

/** Thin lines to the labels that had to stand off, in the units of the axes. */
function leaders(
  labels: readonly {readonly at: Pixel; readonly leader?: Pixel}[],
  {width, height, largestSize, largestValue}: RarefactionPlot
): Record<string, unknown> {
  const size = ({x}: Pixel) => (x / width) * largestSize
  const value = ({y}: Pixel) => ((height - y) / height) * largestValue
  return {
    data: {
      values: labels.flatMap(({at, leader}) =>
        leader === undefined
          ? []
          : [{size: size(at), value: value(at), endSize: size(leader), endValue: value(leader)}]
      )
    },
    mark: {type: 'rule', strokeWidth: 0.6},
    encoding: {
      x: {field: 'size', type: 'quantitative'},
      x2: {field: 'endSize'},
      y: {field: 'value', type: 'quantitative'},
      y2: {field: 'endValue'}
    }
  }
}

function drawnPoints(
  lines: readonly RarefactionLine[],
  toPixel: (point: CurvePoint) => Pixel
): readonly Pixel[] {
  return lines.flatMap(({within, beyond, atCatch}) => {
    const {x, y} = toPixel(atCatch)
    const symbol = [-5, 0, 5].flatMap((dx) => [-5, 0, 5].map((dy) => ({x: x + dx, y: y + dy})))
    return [...alongLine([...within, ...beyond].map(toPixel)), ...symbol]
  })
}

function nameOf({label, style}: RarefactionLine, at: Pixel): Words {
  const {width, height, words} = sized(wrapLabel(label, 20, 3))
  return {at, words, style, symbol: true, width: width + symbolWidth, height}
}

/** 'within the catch' and 'beyond the catch' at the middle of the parts of the line that goes furthest beyond. */
function partNames(lines: readonly RarefactionLine[], toPixel: (point: CurvePoint) => Pixel): Words[] {
  const length = (line: RarefactionLine) => toPixel(endOf(line)).x - toPixel(line.atCatch).x
  const longest = lines.toSorted((one, other) => length(other) - length(one))[0]
  if (longest === undefined) return []
  const named = [
    {points: longest.within, words: 'within the catch'},
    {points: longest.beyond, words: 'beyond the catch'}
  ]
  return named.flatMap(({points, words}) => {
    const middle = points[Math.floor(points.length / 2)]
    return middle === undefined ? [] : [{at: toPixel(middle), ...sized(words)}]
  })
}

function sized(words: string): {words: string; width: number; height: number} {
  const lines = words.split('\n')
  return {
    words,
    width: Math.max(...lines.map(({length}) => length)) * letterWidth,
    height: lines.length * lineHeight
  }
}
