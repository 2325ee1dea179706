import {inkTones} from '../model/ink.ts'
import {type CurveLine, type CurvePlot, type CurvePoint, endOf} from './curve-lines.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {lettering} from './lettering.ts'
import {alongLine, type LabelToPlace, type Pixel, placeLabels} from './place-labels.ts'
import {letterWidth, lineHeight} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

/** What a plot says in words, apart from its axes. */
export interface PlotWords {
  /** Whether each line bears its habitat's symbol and name at its end. */
  readonly habitats: boolean
  /** What the strong and the thin part of a line are, once in a picture. */
  readonly parts?: {readonly strong: string; readonly thin: string} | undefined
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
  lines: readonly CurveLine[],
  plot: CurvePlot,
  {habitats, parts, roomRight}: PlotWords
): readonly Record<string, unknown>[] {
  const toPixel = ({at, value}: CurvePoint): Pixel => ({
    x: ((at - plot.from) / (plot.to - plot.from)) * plot.width,
    y: plot.height - (value / plot.largestValue) * plot.height
  })
  const labels = [
    ...(habitats ? lines.map((line) => nameOf(line, toPixel(endOf(line)))) : []),
    ...(parts === undefined ? [] : partNames(lines, parts, toPixel))
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

/** Thin lines to the labels that had to stand off, in the units of the axes. */
function leaders(
  labels: readonly {readonly at: Pixel; readonly leader?: Pixel}[],
  {width, height, from, to, largestValue}: CurvePlot
): Record<string, unknown> {
  const along = ({x}: Pixel) => from + (x / width) * (to - from)
  const value = ({y}: Pixel) => ((height - y) / height) * largestValue
  return {
    data: {
      values: labels.flatMap(({at, leader}) =>
        leader === undefined
          ? []
          : [{at: along(at), value: value(at), endAt: along(leader), endValue: value(leader)}]
      )
    },
    mark: {type: 'rule', strokeWidth: 0.6},
    encoding: {
      x: {field: 'at', type: 'quantitative'},
      x2: {field: 'endAt'},
      y: {field: 'value', type: 'quantitative'},
      y2: {field: 'endValue'}
    }
  }
}

function drawnPoints(lines: readonly CurveLine[], toPixel: (point: CurvePoint) => Pixel): readonly Pixel[] {
  return lines.flatMap(({strong, thin, mark}) => {
    const {x, y} = toPixel(mark)
    const symbol = [-5, 0, 5].flatMap((dx) => [-5, 0, 5].map((dy) => ({x: x + dx, y: y + dy})))
    return [...alongLine(strong.map(toPixel)), ...alongLine(thin.map(toPixel)), ...symbol]
  })
}

function nameOf({label, style}: CurveLine, at: Pixel): Words {
  const {width, height, words} = sized(wrapLabel(label, 20, 3))
  return {at, words, style, symbol: true, width: width + symbolWidth, height}
}

/** What the parts are, at the middle of those of the line whose thin part is the longest. */
function partNames(
  lines: readonly CurveLine[],
  parts: {readonly strong: string; readonly thin: string},
  toPixel: (point: CurvePoint) => Pixel
): Words[] {
  const length = ({thin}: CurveLine) => {
    const [first, last] = [thin[0], thin.at(-1)]
    return first === undefined || last === undefined ? 0 : toPixel(last).x - toPixel(first).x
  }
  const longest = lines.toSorted((one, other) => length(other) - length(one))[0]
  if (longest === undefined) return []
  return (['strong', 'thin'] as const).flatMap((part) => {
    const points = longest[part]
    const middle = points[Math.floor(points.length / 2)]
    return middle === undefined ? [] : [{at: toPixel(middle), ...sized(parts[part])}]
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
