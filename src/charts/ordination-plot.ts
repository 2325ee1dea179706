import type {HabitatResult, ScopeResult} from '../model/results.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {type LabelToPlace, type Pixel, type PlacedLabel, placeLabels} from './place-labels.ts'
import {letterWidth, lineHeight, lineMark, textLines} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

type Score = ScopeResult['composition']['principalCoordinates']['scores'][number]

const width = 440
const [leastHeight, mostHeight] = [200, 440]
/** Pixels between the outermost points and the edge, for their symbols and some of their names. */
const margin = 26
/** Where the names of the habitats stand, in pixels from the left edge of the plot. */
const keyLeft = width + 34

/** The points in a plot with the same scale on both axes, each with its name where there is room. */
export function ordinationPlot(
  scores: readonly Score[],
  habitats: readonly HabitatResult[],
  [xTitle, yTitle]: readonly [string, string]
): {readonly picture: Record<string, unknown>; readonly unnamed: number} {
  const frame = frameOf(scores)
  const points = scores.map((score) => ({
    ...habitatFields(score.style),
    x: score.at[0] ?? 0,
    y: score.at[1] ?? 0
  }))
  const pixels = points.map(({x, y}) => frame.toPixel(x, y))
  const labels = scores.map(({label}, index) => labelAt(label, pixels[index]!))
  const symbols = pixels.flatMap(({x, y}) =>
    [-5, 0, 5].flatMap((dx) => [-5, 0, 5].map((dy) => ({x: x + dx, y: y + dy})))
  )
  const inside = {left: 2, right: width - 2, top: 0, bottom: frame.height - 2}
  const named = withoutCollisions(labels, placeLabels(labels, symbols, inside), pixels, inside)
  const axis = (field: string, title: string, domain: readonly [number, number]) => ({
    field,
    type: 'quantitative',
    title,
    scale: {domain, nice: false, zero: false},
    axis: {tickCount: 4, format: '.2~f'}
  })
  const encoding = {x: axis('x', xTitle, frame.x), y: axis('y', yTitle, frame.y)}
  const picture = {
    width,
    height: frame.height,
    layer: [
      {
        data: {values: named.flatMap(({at, leader}) => leaderOf(at, leader, frame))},
        mark: {type: 'rule', strokeWidth: 0.6},
        encoding: {...encoding, x2: {field: 'x2'}, y2: {field: 'y2'}}
      },
      {
        data: {values: points},
        mark: {type: 'point', filled: true, size: 90, opacity: 1},
        encoding: {...encoding, color: habitatColour, shape: habitatShape}
      },
      {
        data: {
          values: named.flatMap(({words, left, middle}) =>
            textLines(words, 'middle').map((line) => ({...line, left, middle}))
          )
        },
        mark: {
          ...lineMark,
          align: 'left',
          baseline: 'middle',
          x: {expr: 'datum.left'},
          y: {expr: 'datum.middle'}
        },
        encoding: {text: {field: 'text', type: 'nominal'}}
      },
      ...key(habitats)
    ]
  }
  return {picture, unnamed: scores.length - named.length}
}

interface Frame {
  readonly height: number
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
  toPixel(x: number, y: number): Pixel
  fromPixel(pixel: Pixel): Pixel
}

/** A frame in which one unit is as long on one axis as on the other. */
function frameOf(scores: readonly Score[]): Frame {
  const [x, y] = [0, 1].map((axis) => {
    const values = scores.map(({at}) => at[axis] ?? 0)
    return {
      middle: (Math.min(...values) + Math.max(...values)) / 2,
      span: Math.max(...values) - Math.min(...values)
    }
  }) as [{middle: number; span: number}, {middle: number; span: number}]
  const height = Math.min(
    mostHeight,
    Math.max(leastHeight, ((width - 2 * margin) * y.span) / (x.span || 1) + 2 * margin)
  )
  const perPixel = Math.max(x.span / (width - 2 * margin), y.span / (height - 2 * margin)) || 0.01
  const left = x.middle - (width / 2) * perPixel
  const top = y.middle + (height / 2) * perPixel
  return {
    height,
    x: [left, left + width * perPixel],
    y: [top - height * perPixel, top],
    toPixel: (across, up) => ({x: (across - left) / perPixel, y: (top - up) / perPixel}),
    fromPixel: (pixel) => ({x: left + pixel.x * perPixel, y: top - pixel.y * perPixel})
  }
}

interface Label extends LabelToPlace {
  readonly words: string
}

function labelAt(label: string, at: Pixel): Label {
  const words = wrapLabel(label, 20, 3)
  const lines = words.split('\n')
  const longest = Math.max(...lines.map(({length}) => length))
  return {at, words, width: longest * letterWidth, height: lines.length * lineHeight}
}

/** Among more points than these, a name that needs a line to its point would be one of a tangle. */
const mostWithLines = 24

/** The labels that stand inside the frame and cover no other and no point: where points crowd, some must go. */
function withoutCollisions(
  labels: readonly Label[],
  places: readonly PlacedLabel[],
  points: readonly Pixel[],
  frame: {readonly left: number; readonly right: number; readonly top: number; readonly bottom: number}
): readonly (Label & PlacedLabel)[] {
  const kept: (Label & PlacedLabel)[] = []
  for (const [index, label] of labels.entries()) {
    const one = {...label, ...places[index]!}
    const free = kept.every(
      (other) =>
        one.left >= other.left + other.width ||
        other.left >= one.left + one.width ||
        Math.abs(one.middle - other.middle) >= (one.height + other.height) / 2
    )
    const half = one.height / 2
    const inside =
      one.left >= frame.left - 1 &&
      one.left + one.width <= frame.right + 1 &&
      one.middle - half >= frame.top - 1 &&
      one.middle + half <= frame.bottom + 1
    const near = one.leader === undefined || labels.length <= mostWithLines
    const clear = points.every(
      ({x, y}) => x <= one.left - 3 || x >= one.left + one.width + 3 || Math.abs(y - one.middle) >= half + 1
    )
    if (free && inside && near && clear) kept.push(one)
  }
  return kept
}

function leaderOf(at: Pixel, leader: Pixel | undefined, {fromPixel}: Frame): object[] {
  if (leader === undefined) return []
  const [from, to] = [fromPixel(at), fromPixel(leader)]
  return [{...from, x2: to.x, y2: to.y}]
}

/** The habitats beside the plot, each with its symbol. */
function key(habitats: readonly HabitatResult[]): Record<string, unknown>[] {
  let top = 6
  const rows = habitats.map(({label, style}) => {
    const words = wrapLabel(label, 22, 3)
    const row = {words, first: top, style}
    top += words.split('\n').length * lineHeight + 7
    return row
  })
  return [
    {
      data: {values: rows.map(({first, style}) => ({first, ...habitatFields(style)}))},
      mark: {type: 'point', filled: true, size: 64, x: keyLeft, y: {expr: 'datum.first'}},
      encoding: {color: habitatColour, shape: habitatShape}
    },
    {
      data: {
        values: rows.flatMap(({words, first}) =>
          words.split('\n').map((text, line) => ({text, middle: first + line * lineHeight}))
        )
      },
      mark: {type: 'text', align: 'left', baseline: 'middle', x: keyLeft + 11, y: {expr: 'datum.middle'}},
      encoding: {text: {field: 'text', type: 'nominal'}}
    }
  ]
}
