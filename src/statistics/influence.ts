import {isDefined, type Quantity} from '../model/quantity.ts'
import type {GroupedCounts} from './likelihood-ratio-permutation.ts'
import {type RateRatio, rateRatios} from './rate-ratios.ts'

/** What one pair's ratio becomes without the unit that moves it most. */
export interface Influence {
  readonly of: string | number
  readonly to: string | number
  /** Index of the unit; absent where leaving out no unit can be judged. */
  readonly unit?: number
  /** The ratio without it, or why there is none: leaving it out can take away all catch of a group. */
  readonly ratioWithout: Quantity
  /** The ratio of each pair without each unit in turn. */
  readonly ratiosWithout: readonly Quantity[]
}

/**
 * The most influential unit of every rate ratio: each unit is left out once, the model fitted again, and the
 * unit whose leaving moves the ratio most is named.
 *
 * Formula: the unit with the largest |ln(ratio without it) - ln(ratio)|.
 *
 * Source: leaving out one unit at a time, Cook & Weisberg 1982, Residuals and Influence in Regression (from
 * memory).
 *
 * Edge cases: a unit without which the ratio is not defined (the only catch of its group, or its only unit)
 * moves it beyond measure and is the most influential; of several, and of equal shifts, the first. Where the
 * ratio of all units is not defined, no unit is named.
 *
 * @example influence({counts: [10, 11, 9, 30, 33, 300], efforts: [9, 9, 9, 9, 9, 9], groups: ['a', 'a', 'a', 'b', 'b', 'b']})[0].unit // => 5
 * @example influence({counts: [10, 11, 0, 3], efforts: [9, 9, 9, 9], groups: ['a', 'a', 'b', 'b']})[0].unit // => 3
 */
export function influence(
  data: GroupedCounts,
  order: readonly (string | number)[] = [...new Set(data.groups)]
): Influence[] {
  const all = rateRatios(data, {order})
  const leftOut = data.counts.map((_, unit) => rateRatios(withoutUnit(data, unit), {order}))
  return all.map((pair, index) => {
    const ratiosWithout = leftOut.map((ratios, unit) => ratioWithout(ratios[index]!, data, unit))
    const unit = mostShifting(pair, ratiosWithout)
    return {
      of: pair.of,
      to: pair.to,
      ...(unit !== undefined && {unit}),
      ratioWithout: unit === undefined ? pair.ratio : ratiosWithout[unit]!,
      ratiosWithout
    }
  })
}

function mostShifting({ratio}: RateRatio, ratiosWithout: readonly Quantity[]): number | undefined {
  if (!isDefined(ratio)) return undefined
  let most: {readonly unit: number; readonly shift: number} | undefined
  for (const [unit, without] of ratiosWithout.entries()) {
    const shift = isDefined(without)
      ? Math.abs(Math.log(without.value / ratio.value))
      : Number.POSITIVE_INFINITY
    // Shifts that differ by rounding alone are equal: the order of a sum must not choose the unit.
    if (most === undefined || shift > most.shift + 1e-9) most = {unit, shift}
  }
  return most?.unit
}

/**
 * A group that lost its only unit has no coefficient; what the model returns for it would be another group's.
 */
function ratioWithout({of, to, ratio}: RateRatio, {groups}: GroupedCounts, unit: number): Quantity {
  const lost = [of, to].find((group) => !groups.some((other, index) => index !== unit && other === group))
  return lost === undefined ? ratio : {notDefined: 'a group has no other unit'}
}

function withoutUnit({counts, efforts, groups, blocks}: GroupedCounts, unit: number): GroupedCounts {
  const others = <T>(values: readonly T[]): T[] => values.filter((_, index) => index !== unit)
  return {
    counts: others(counts),
    efforts: others(efforts),
    groups: others(groups),
    ...(blocks && {blocks: others(blocks)})
  }
}
