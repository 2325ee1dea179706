import {type Defined, isDefined, type Quantity} from '../model/quantity.ts'
import type {AssemblageResult, CurveResult} from '../model/results.ts'
import type {CurveOfOrder} from './diversity-estimates.ts'

/** Curves by number of individuals, as points. */
export function pointCurves(curves: readonly CurveOfOrder[], size: number): AssemblageResult['curves'] {
  return curves.map(({order, points}) => ({
    order,
    points: points.flatMap((point) => {
      const {bySize} = point
      if (!isDefined(bySize)) return []
      const band = bySize.interval && {low: short(bySize.interval.low), high: short(bySize.interval.high)}
      return [{size: point.size, value: short(bySize.value), beyond: point.size > size, ...band}]
    })
  }))
}

/** Curves by number of sampling units, as columns. */
export function sizeCurves(curves: readonly CurveOfOrder[], size: number): CurveResult[] {
  return curves.map(({order, points}) => {
    return columns(
      order,
      points.map((point) => ({at: point.size, quantity: point.bySize, beyond: point.size > size}))
    )
  })
}

/** Curves by coverage, as columns. Empty where coverage is not defined. */
export function coverageCurves(curves: readonly CurveOfOrder[], size: number): CurveResult[] {
  return curves.map(({order, points}) => {
    const placed = points.flatMap((point) => {
      const {coverage, byCoverage} = point
      if (!isDefined(coverage)) return []
      return [{at: short(coverage.value), quantity: byCoverage, beyond: point.size > size}]
    })
    const end = placed.filter(({beyond}) => !beyond).at(-1)?.at ?? 0
    // Rounded coverages can tie; the catch itself stays, and a sample that is complete has nothing beyond.
    const apart = placed.filter(({at, beyond}, index) => {
      const next = placed[index + 1]
      return beyond ? at > end && at > placed[index - 1]!.at : next === undefined || next.beyond || at < end
    })
    const distinct = apart.filter(({at, beyond}, index) => beyond || at > (apart[index - 1]?.at ?? -1))
    return columns(order, distinct)
  })
}

interface Place {
  readonly at: number
  readonly quantity: Quantity
  readonly beyond: boolean
}

function columns(order: CurveResult['order'], places: readonly Place[]): CurveResult {
  const drawn = places.flatMap(({at, quantity, beyond}) =>
    isDefined(quantity) ? [{at, quantity, beyond}] : []
  )
  const banded = drawn.every(({quantity}) => quantity.interval !== undefined)
  const band = (end: (quantity: Defined) => number | undefined) =>
    banded ? drawn.map(({quantity}) => short(end(quantity) ?? quantity.value)) : []
  return {
    order,
    at: drawn.map(({at}) => at),
    values: drawn.map(({quantity}) => short(quantity.value)),
    low: band(({interval}) => interval?.low),
    high: band(({interval}) => interval?.high),
    within: drawn.filter(({beyond}) => !beyond).length
  }
}

/** Six significant figures: more than a picture can show. */
export function short(value: number): number {
  return Number(value.toPrecision(6))
}
