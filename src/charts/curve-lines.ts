import type {CurveResult} from '../model/results.ts'

export type DiversityOrder = 0 | 1 | 2

/** A point of a curve: so many individuals (or sampling units, or so high a coverage), so many (effective) species. */
export interface CurvePoint {
  readonly at: number
  readonly value: number
  /** Ends of the band. */
  readonly low?: number
  readonly high?: number
}

/** A habitat's curve in two parts, strong and thin. */
export interface CurveLine {
  readonly label: string
  /** Place of the habitat in the palette. */
  readonly style: number
  /** What the catch itself tells. */
  readonly strong: readonly CurvePoint[]
  /** What goes beyond it; starts where the strong part ends, so that both meet, or is empty. */
  readonly thin: readonly CurvePoint[]
  /** Where the habitat's symbol stands. */
  readonly mark: CurvePoint
}

/** A curve parted at the catch; undefined where it has no point within the catch. */
export function partedLine(
  {label, style}: Pick<CurveLine, 'label' | 'style'>,
  within: readonly CurvePoint[],
  beyond: readonly CurvePoint[]
): CurveLine | undefined {
  const mark = within.at(-1)
  if (mark === undefined) return undefined
  return {label, style, strong: within, thin: beyond.length === 0 ? [] : [mark, ...beyond], mark}
}

/** The line from a place of the axis on; where it crosses that place it gets a point. */
export function lineFrom(line: CurveLine, from: number): CurveLine {
  const after = line.strong.findIndex(({at}) => at >= from)
  const [before, next] = [line.strong[after - 1], line.strong[after]]
  if (before === undefined || next === undefined) return line
  const share = (from - before.at) / (next.at - before.at)
  const between = (one: number, other: number) => one + (other - one) * share
  const start: CurvePoint = {
    at: from,
    value: between(before.value, next.value),
    ...(before.low !== undefined && next.low !== undefined && {low: between(before.low, next.low)}),
    ...(before.high !== undefined && next.high !== undefined && {high: between(before.high, next.high)})
  }
  return {...line, strong: [...(next.at > from ? [start] : []), ...line.strong.slice(after)]}
}

/** The points of a curve that is held as columns. */
export function pointsOf({at, values, low, high}: CurveResult): readonly CurvePoint[] {
  return at.map((place, index) => {
    return {at: place, value: values[index] ?? 0, ...bandOf(low[index], high[index])}
  })
}

/** Both ends of a band, or none. */
export function bandOf(low: number | undefined, high: number | undefined): Pick<CurvePoint, 'low' | 'high'> {
  return low === undefined || high === undefined ? {} : {low, high}
}

/** The last point of a line. */
export function endOf({strong, thin, mark}: CurveLine): CurvePoint {
  return thin.at(-1) ?? strong.at(-1) ?? mark
}

/** A plot of curves: its size in pixels and what its axes reach. */
export interface CurvePlot {
  readonly width: number
  readonly height: number
  /** Where the horizontal axis starts and ends. */
  readonly from: number
  readonly to: number
  readonly largestValue: number
}

/** How much further than the highest line an axis may go to show a band. */
const mostForBands = 1.6

/** All points of some lines. */
export function allPoints(lines: readonly CurveLine[]): readonly CurvePoint[] {
  return lines.flatMap(({strong, thin}) => [...strong, ...thin])
}

/** Extent of the axes that holds all points, with a little air above, and the bands where they are not very wide. */
export function extentOf(points: readonly CurvePoint[]): {
  readonly to: number
  readonly largestValue: number
  /** Whether some band is cut off above. */
  readonly cut: boolean
} {
  const highest = Math.max(1, ...points.map(({value}) => value))
  const bands = Math.max(highest, ...points.map(({high}) => high ?? 0))
  return {
    to: Math.max(2, ...points.map(({at}) => at)),
    largestValue: Math.min(bands, highest * mostForBands) * 1.05,
    cut: bands > highest * mostForBands * 1.05
  }
}
