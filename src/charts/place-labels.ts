/** A point in pixels from the upper left corner of a plot. */
export interface Pixel {
  readonly x: number
  readonly y: number
}

/** A label that is to stand near a point, and the room that its lettering takes. */
export interface LabelToPlace {
  readonly at: Pixel
  readonly width: number
  readonly height: number
  /** Whether a symbol of 8 pixels stands at its left edge, to which a leading line then goes. */
  readonly symbol?: boolean
}

export interface PlacedLabel {
  /** Left edge and middle height of the lettering. */
  readonly left: number
  readonly middle: number
  /** Where a line from the point to the label ends; absent where the label stands close enough to need none. */
  readonly leader?: Pixel
}

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const distances = [8, 15, 24, 34, 46, 60, 76, 94]
const directions = Array.from({length: 16}, (_, step) => (step * Math.PI) / 8)
const needsLeaderFrom = 13

/**
 * Finds a free place for each label in turn: near its point, to the right of it if possible, off the drawn lines,
 * inside the frame and above all off the labels placed before. The same input always gives the same places.
 *
 * @param drawn points along everything that a label should not cover, close together
 */
export function placeLabels(
  labels: readonly LabelToPlace[],
  drawn: readonly Pixel[],
  frame: Box
): readonly PlacedLabel[] {
  const taken: Box[] = []
  return labels.map((label) => {
    const candidates = distances.flatMap((distance) =>
      directions.map((direction) => {
        const box = boxAt(label, distance, direction)
        return {box, cost: cost(box, distance, direction, drawn, taken, frame)}
      })
    )
    const {box} = candidates.reduce((best, other) => (other.cost < best.cost ? other : best))
    taken.push(box)
    const place = {left: box.left, middle: (box.top + box.bottom) / 2}
    const leader = leaderEnd(label, box)
    const far = Math.hypot(leader.x - label.at.x, leader.y - label.at.y) >= needsLeaderFrom
    return far ? {...place, leader} : place
  })
}

/** The end of a line that comes from the label's point: shortly before its symbol, or else at its nearest edge. */
function leaderEnd({at, symbol}: LabelToPlace, box: Box): Pixel {
  const middle = (box.top + box.bottom) / 2
  if (symbol && at.x <= box.left + 10) {
    const [dx, dy] = [box.left + 4 - at.x, middle - at.y]
    const share = 1 - Math.min(1, 7 / Math.hypot(dx, dy))
    return {x: at.x + dx * share, y: at.y + dy * share}
  }
  if (at.x <= box.left) return {x: box.left - 2, y: middle}
  return {x: clamp(at.x, box.left, box.right + 2), y: clamp(at.y, box.top, box.bottom)}
}

function boxAt({at, width, height}: LabelToPlace, distance: number, direction: number): Box {
  const x = at.x + Math.cos(direction) * (distance + width / 2)
  const y = at.y + Math.sin(direction) * (distance + height / 2)
  return {left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2}
}

/** Worse than anything else is a label upon a label, then one outside the frame, then each covered point. */
function cost(
  box: Box,
  distance: number,
  direction: number,
  drawn: readonly Pixel[],
  taken: readonly Box[],
  frame: Box
): number {
  const covered = drawn.filter(
    ({x, y}) => x > box.left - 3 && x < box.right + 3 && y > box.top - 1 && y < box.bottom + 1
  )
  const upon = taken.filter(
    (other) =>
      other.left < box.right + 4 &&
      other.right > box.left - 4 &&
      other.top < box.bottom &&
      other.bottom > box.top
  )
  const outside =
    Math.max(0, frame.left - box.left) +
    Math.max(0, box.right - frame.right) +
    Math.max(0, frame.top - box.top) +
    Math.max(0, box.bottom - frame.bottom)
  return upon.length * 1e6 + outside * 1e4 + covered.length * 100 + distance + (1 - Math.cos(direction)) * 6
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value))
}

/** Points at most three pixels apart along a line through the given ones. */
export function alongLine(line: readonly Pixel[]): readonly Pixel[] {
  return line.flatMap((to, index) => {
    const from = line[index - 1] ?? to
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 3))
    return Array.from({length: steps}, (_, step) => {
      const share = (step + 1) / steps
      return {x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share}
    })
  })
}
