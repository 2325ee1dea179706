/** How well one species points to one group. */
export interface IndicatorValue {
  /** Group of the largest value; the first of several equal ones. */
  readonly group: string | number
  /** A: mean in the group over the sum of the means of all groups, 0 to 1. */
  readonly specificity: number
  /** B: share of the samples of the group that hold the species, 0 to 1. */
  readonly fidelity: number
  /** A times B, 0 to 1; 1 is a species of every sample of this group and of no other. */
  readonly value: number
}

/**
 * Indicator value of one species for the groups of samples: `values[i]` is its catch, as a rate where effort
 * differs, in sample i of group `groups[i]`. As a share: times 100 it is the per cent of the source.
 *
 * Formula: largest over groups of A B; A = mean of the group / sum of the means of all groups, B = samples of
 * the group that hold it / samples of the group.
 *
 * Source: Dufrene & Legendre 1997, Ecol. Monogr. 67:345-366.
 *
 * Edge cases: a species never caught has no indicator value (undefined).
 *
 * @throws RangeError where values and groups differ in number.
 *
 * @example indicatorValue([3, 1, 0, 0], ['a', 'a', 'b', 'b']) // => {group: 'a', specificity: 1, fidelity: 1, value: 1}
 * @example indicatorValue([6, 0, 1, 1], ['a', 'a', 'b', 'b']) // => {group: 'a', specificity: 0.75, fidelity: 0.5, value: 0.375}
 * @example indicatorValue([0, 0], ['a', 'b']) // => undefined
 */
export function indicatorValue(
  values: readonly number[],
  groups: readonly (string | number)[]
): IndicatorValue | undefined {
  if (values.length !== groups.length) throw new RangeError('every value needs its group')
  const names = [...new Set(groups)]
  const indexed = groups.map((group) => names.indexOf(group))
  const {means, presences} = groupProfile(values, indexed, names.length)
  const meanSum = means.reduce((sum, mean) => sum + mean, 0)
  if (meanSum === 0) return undefined
  let best: IndicatorValue | undefined
  for (const [index, group] of names.entries()) {
    const specificity = means[index]! / meanSum
    const fidelity = presences[index]!
    const value = specificity * fidelity
    // Equal values may differ in their last digit: the first group keeps its place then.
    if (best === undefined || value > best.value + 1e-12) best = {group, specificity, fidelity, value}
  }
  return best
}

/** The value alone for groups by index, for a permutation test; 0 where the species was never caught. */
export function largestIndicatorValue(
  values: readonly number[],
  groups: readonly number[],
  groupCount: number
): number {
  const {means, presences} = groupProfile(values, groups, groupCount)
  const meanSum = means.reduce((sum, mean) => sum + mean, 0)
  if (meanSum === 0) return 0
  return Math.max(...means.map((mean, group) => (mean / meanSum) * presences[group]!))
}

function groupProfile(
  values: readonly number[],
  groups: readonly number[],
  groupCount: number
): {readonly means: readonly number[]; readonly presences: readonly number[]} {
  const sums = Array.from({length: groupCount}, () => 0)
  const present = Array.from({length: groupCount}, () => 0)
  const sizes = Array.from({length: groupCount}, () => 0)
  for (const [sample, value] of values.entries()) {
    const group = groups[sample]!
    sizes[group]! += 1
    sums[group]! += value
    if (value > 0) present[group]! += 1
  }
  return {
    means: sums.map((sum, group) => sum / sizes[group]!),
    presences: present.map((count, group) => count / sizes[group]!)
  }
}
