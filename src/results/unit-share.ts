import type {Measure} from '../model/quantity.ts'
import {ratioShare} from '../statistics/ratio-share.ts'
import {measured} from './counted.ts'
import {type UnitKind, unitOf} from './sampling-units.ts'
import type {CatchInUse} from './season-records.ts'

/** Individuals of each sampling unit. */
export type UnitCounts = Map<number, number>

export function addToCounts(counts: UnitCounts, each: CatchInUse, kind: UnitKind): void {
  const unit = unitOf(each, kind)
  counts.set(unit, (counts.get(unit) ?? 0) + each.count)
}

export function totalOf(counts: UnitCounts | undefined): number {
  let sum = 0
  for (const count of counts?.values() ?? []) sum += count
  return sum
}

/** Share of the individuals that are of one kind, with its range between sampling units. */
export function unitShare(
  label: string,
  part: UnitCounts | undefined,
  whole: UnitCounts,
  confidence: number,
  whyNothing: string
): Measure {
  // Units in their own order, so that the order of rows cannot move the last digit of a sum.
  const units = [...whole].sort(([a], [b]) => a - b)
  const quantity = ratioShare(
    units.map(([unit, count]) => ({part: part?.get(unit) ?? 0, whole: count})),
    confidence
  )
  return measured(label, 'share', 'value' in quantity ? quantity : {notDefined: whyNothing})
}
