import type {AssemblageResult} from '../model/results.ts'

export type DiversityOrder = 0 | 1 | 2

/** A point of a curve: so many individuals, so many (effective) species. */
export interface CurvePoint {
  readonly size: number
  readonly value: number
}

/** A habitat's curve of one order, parted at the catch. */
export interface RarefactionLine {
  readonly label: string
  /** Place of the habitat in the palette. */
  readonly style: number
  readonly within: readonly CurvePoint[]
  /** Starts at the catch, so that both parts meet; empty where the curve is not drawn on. */
  readonly beyond: readonly CurvePoint[]
  readonly atCatch: CurvePoint
}

/** The curves of one order, of those assemblages that have one. */
export function rarefactionLines(
  assemblages: readonly AssemblageResult[],
  order: DiversityOrder
): readonly RarefactionLine[] {
  return assemblages.flatMap(({label, style, curves}) => {
    const points = curves.find((curve) => curve.order === order)?.points ?? []
    const within = points.filter(({beyond}) => !beyond)
    const atCatch = within.at(-1)
    if (atCatch === undefined) return []
    const further = points.filter(({beyond}) => beyond)
    return [{label, style, within, beyond: further.length === 0 ? [] : [atCatch, ...further], atCatch}]
  })
}

/** The last point of a line. */
export function endOf({beyond, atCatch}: RarefactionLine): CurvePoint {
  return beyond.at(-1) ?? atCatch
}

/** The plot of one order: its size in pixels and the largest values on its axes. */
export interface RarefactionPlot {
  readonly width: number
  readonly height: number
  readonly largestSize: number
  readonly largestValue: number
}

/** Extent of the axes that holds all lines, with a little air above. */
export function extentOf(
  lines: readonly RarefactionLine[]
): Pick<RarefactionPlot, 'largestSize' | 'largestValue'> {
  const points = lines.flatMap(({within, beyond}) => [...within, ...beyond])
  return {
    largestSize: Math.max(2, ...points.map(({size}) => size)),
    largestValue: Math.max(1, ...points.map(({value}) => value)) * 1.05
  }
}
