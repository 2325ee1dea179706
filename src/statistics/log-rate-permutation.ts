import {permutations} from './permutations.ts'
import type {RandomStream} from './random-stream.ts'

/** Sampling units of a season, and what their counts are expected to be in proportion to where no group differs. */
export interface ExpectedUnits {
  readonly expected: readonly number[]
  readonly groups: readonly (string | number)[]
  /** Block of each unit; groups change places within a block only. */
  readonly blocks?: readonly (string | number)[]
  /** Aggregation of the counts; Infinity for Poisson. */
  readonly theta: number
}

/** Layouts with no more arrangements than this are tried in full, others by `fewDraws` at random. */
const fewArrangements = 500

/** Enough to tell p up to 0.05 from larger ones; the test of a report draws more. */
const fewDraws = 199

/**
 * A quick test of a difference between groups, for many invented seasons: whether p of their counts by permutation
 * is not above a level. Undefined where no counts of this layout could bring it there.
 *
 * Formula: sum over groups of (sum w y)^2/sum w, y = ln((c + 1/2)/expected) less its weighted mean in the unit's
 * block, w = 1/(1/m + 1/theta), m the count in proportion to expected in the block, at least 1/2; p by permuting
 * groups over units, within blocks. It finds what the likelihood ratio of the negative binomial model finds, within
 * a few per cent of the ratio (tests/statistics/planning.test.ts), at a hundredth of the cost.
 *
 * Source: logarithms of counts with 1/2 added, Anscombe 1948, Biometrika 35:246-254 (from memory), weighted by the
 * inverse of their variance by the delta method; permutations as in permutations.ts.
 *
 * Edge cases: counts of 0 everywhere differ in nothing; a unit of which nothing is expected tells nothing.
 *
 * @example logRatePermutation({expected: [9, 9, 9, 9], groups: ['a', 'a', 'b', 'b'], theta: 5}, {level: 0.05}) // => undefined
 * @example logRatePermutation({expected: [9, 9, 9, 9, 9, 9, 9, 9], groups: ['a', 'a', 'a', 'a', 'b', 'b', 'b', 'b'], theta: 5}, {level: 0.05})([9, 8, 7, 9, 91, 77, 85, 99]) // => true
 */
export function logRatePermutation(
  {expected, groups, blocks, theta}: ExpectedUnits,
  {level, random}: {readonly level: number; readonly random: RandomStream}
): ((counts: readonly number[]) => boolean) | undefined {
  const within = blocks === undefined ? {} : {blocks}
  const every = permutations(groups, {...within, limit: fewArrangements, random})
  const plan = every.exhaustive ? every : permutations(groups, {...within, limit: fewDraws, random})
  // The observed arrangement is one of all of them, and comes on top of those drawn.
  const tried = plan.exhaustive ? plan.tried : plan.tried + 1
  const mayReach = Math.floor(level * tried + 1e-9) - (plan.exhaustive ? 0 : 1)
  if (mayReach < (plan.exhaustive ? 1 : 0)) return undefined
  const units = groups.length
  const arrangements = Uint16Array.from([...plan.arrangements()].flat())
  const observed = Uint16Array.from(plan.observed)
  const logarithms = weightedLogarithms(expected, blocks, theta)
  const sums = new Float64Array(plan.groups.length)
  const weights = new Float64Array(plan.groups.length)
  return (counts) => {
    const {weighted, weight} = logarithms(counts)
    const statistic = (arrangement: Uint16Array, from: number): number => {
      sums.fill(0)
      weights.fill(0)
      for (let unit = 0; unit < units; unit += 1) {
        const group = arrangement[from + unit]!
        sums[group]! += weighted[unit]!
        weights[group]! += weight[unit]!
      }
      let sum = 0
      for (let group = 0; group < sums.length; group += 1) sum += sums[group]! ** 2 / weights[group]!
      return sum
    }
    const own = statistic(observed, 0)
    const tie = own - 1e-9 * Math.max(1, own)
    let reached = 0
    for (let from = 0; from < arrangements.length; from += units) {
      if (statistic(arrangements, from) >= tie && ++reached > mayReach) return false
    }
    return true
  }
}

/** Weights of the units, and their centred logarithms times these. The arrays serve every season in turn. */
function weightedLogarithms(
  expected: readonly number[],
  blocks: readonly (string | number)[] | undefined,
  theta: number
): (counts: readonly number[]) => {readonly weighted: Float64Array; readonly weight: Float64Array} {
  const names = [...new Set(blocks ?? [0])]
  const members = names.map((name) =>
    expected.flatMap((_, unit) => (blocks === undefined || blocks[unit] === name ? [unit] : []))
  )
  const weighted = new Float64Array(expected.length)
  const weight = new Float64Array(expected.length)
  return (counts) => {
    for (const block of members) {
      let caught = 0
      let awaited = 0
      for (const unit of block) {
        caught += counts[unit]!
        awaited += expected[unit]!
      }
      let sum = 0
      let total = 0
      for (const unit of block) {
        const mean = Math.max(0.5, awaited === 0 ? 0 : (caught / awaited) * expected[unit]!)
        weight[unit] = 1 / (1 / mean + 1 / theta)
        weighted[unit] = expected[unit] === 0 ? 0 : Math.log((counts[unit]! + 0.5) / expected[unit]!)
        sum += weight[unit]! * weighted[unit]!
        total += weight[unit]!
      }
      for (const unit of block) weighted[unit] = weight[unit]! * (weighted[unit]! - sum / total)
    }
    return {weighted, weight}
  }
}
