import {isDefined, type Quantity} from '../model/quantity.ts'
import {chiSquareUpperTail} from './special-functions.ts'

export interface KruskalWallis {
  /** H, corrected for ties. */
  readonly statistic: Quantity
  /** Groups less one. */
  readonly degreesOfFreedom: number
  /** Upper tail of chi-square: a rough p for groups of five or more; permute for fewer. */
  readonly chiSquareP: Quantity
}

/**
 * Kruskal-Wallis test that groups of values come from one distribution. `groups[i]` is the group of
 * `values[i]`.
 *
 * Formula: H = [12/(N (N + 1)) sum R_g^2/n_g - 3 (N + 1)] / [1 - sum (t^3 - t)/(N^3 - N)], R_g the sum of the
 * mid-ranks of group g and t the sizes of the ties.
 *
 * Source: Kruskal & Wallis 1952, J. Am. Stat. Assoc. 47:583-621.
 *
 * Edge cases: all values tied, fewer than two groups, or no values: not defined.
 *
 * @throws RangeError where values and groups differ in number.
 *
 * @example kruskalWallis([1, 2, 3, 4, 5, 6], ['a', 'a', 'a', 'b', 'b', 'b']).statistic.value.toFixed(4) // => '3.8571'
 * @example kruskalWallis([2, 2, 2, 2], ['a', 'a', 'b', 'b']).statistic // => {notDefined: 'all values are tied'}
 * @example kruskalWallis([1, 2], ['a', 'a']).statistic // => {notDefined: 'there are fewer than two groups'}
 */
export function kruskalWallis(
  values: readonly number[],
  groups: readonly (string | number)[]
): KruskalWallis {
  if (values.length !== groups.length) throw new RangeError('every value needs its group')
  const {ranks, tieSum} = midRanks(values)
  const total = values.length
  const sums = new Map<string | number, {ranks: number; size: number}>()
  for (const [index, group] of groups.entries()) {
    const sum = sums.get(group) ?? {ranks: 0, size: 0}
    sums.set(group, {ranks: sum.ranks + ranks[index]!, size: sum.size + 1})
  }
  const degreesOfFreedom = Math.max(0, sums.size - 1)
  const statistic = ((): Quantity => {
    if (sums.size < 2) return {notDefined: 'there are fewer than two groups'}
    if (tieSum === total ** 3 - total) return {notDefined: 'all values are tied'}
    const weighted = [...sums.values()].reduce((sum, {ranks: rankSum, size}) => sum + rankSum ** 2 / size, 0)
    const uncorrected = (12 / (total * (total + 1))) * weighted - 3 * (total + 1)
    return {value: Math.max(0, uncorrected / (1 - tieSum / (total ** 3 - total)))}
  })()
  return {
    statistic,
    degreesOfFreedom,
    chiSquareP: isDefined(statistic)
      ? {value: chiSquareUpperTail(statistic.value, degreesOfFreedom)}
      : statistic
  }
}

/** Ranks from 1, tied values sharing the mean of their ranks, and the sum of t^3 - t over the ties. */
function midRanks(values: readonly number[]): {readonly ranks: readonly number[]; readonly tieSum: number} {
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!)
  const ranks = values.map(() => 0)
  let tieSum = 0
  for (let start = 0; start < order.length; ) {
    let end = start
    while (end < order.length && values[order[end]!] === values[order[start]!]) end += 1
    for (const index of order.slice(start, end)) ranks[index] = (start + end + 1) / 2
    const tied = end - start
    tieSum += tied ** 3 - tied
    start = end
  }
  return {ranks, tieSum}
}
