import {type LabelToPlace, type Pixel, type PlacedLabel, placeLabels} from './place-labels.ts'
import {letterWidth, lineHeight} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

export interface NamedPoint {
  readonly name: string
  readonly at: Pixel
}

interface Label extends LabelToPlace {
  readonly words: string
}

export type PlacedName = Label & PlacedLabel

/** Among more points than these, a name that needs a line to its point would be one of a tangle. */
const mostWithLines = 24

/** Names beside their points, inside a plot, none upon another or upon a symbol: where points crowd, some must go. */
export function namePoints(
  points: readonly NamedPoint[],
  {width, height}: {readonly width: number; readonly height: number},
  lettersPerLine = 20
): readonly PlacedName[] {
  const labels = points.map((point) => labelAt(point, lettersPerLine))
  const symbols = points.flatMap(({at: {x, y}}) =>
    [-4.9, 0, 4.9].flatMap((dx) => [-4.9, 0, 4.9].map((dy) => ({x: x + dx, y: y + dy})))
  )
  const frame = {left: 2, right: width - 2, top: 0, bottom: height - 2}
  const places = placeLabels(labels, symbols, frame)
  const kept: PlacedName[] = []
  for (const [index, label] of labels.entries()) {
    const one = {...label, ...places[index]!}
    const half = one.height / 2
    const free = kept.every(
      (other) =>
        one.left >= other.left + other.width ||
        other.left >= one.left + one.width ||
        Math.abs(one.middle - other.middle) >= (one.height + other.height) / 2
    )
    const inside =
      one.left >= frame.left - 1 &&
      one.left + one.width <= frame.right + 1 &&
      one.middle - half >= frame.top - 1 &&
      one.middle + half <= frame.bottom + 1
    const near = one.leader === undefined || labels.length <= mostWithLines
    const clear = points.every(
      ({at: {x, y}}) =>
        x <= one.left - 3 || x >= one.left + one.width + 3 || Math.abs(y - one.middle) >= half + 1
    )
    if (free && inside && near && clear) kept.push(one)
  }
  return kept
}

function labelAt({name, at}: NamedPoint, lettersPerLine: number): Label {
  const words = wrapLabel(name, lettersPerLine, 3)
  const lines = words.split('\n')
  const longest = Math.max(...lines.map(({length}) => length))
  return {at, words, width: longest * letterWidth, height: lines.length * lineHeight}
}

/** A note on the points that stay without a name; none where all have theirs. */
export function unnamedNotes(named: number, points: number): readonly string[] {
  return named === points
    ? []
    : [`Without a name, for want of room: ${points - named} of the ${points} points.`]
}
