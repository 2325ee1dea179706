import {inverse, Matrix, SingularValueDecomposition} from 'ml-matrix'
import type {Quantity} from '../model/quantity.ts'
import {gowerCentred} from './gower-centred.ts'
import {permutationTest} from './permutation-test.ts'
import {type PermutationOptions, type PermutationScheme, permutations} from './permutations.ts'

export interface Permanova {
  readonly pseudoF: Quantity
  /** Share of the total sum of squares that the groups account for. */
  readonly r2: Quantity
  readonly degreesOfFreedom: {readonly groups: number; readonly residual: number}
  readonly sumOfSquares: {readonly groups: number; readonly residual: number; readonly total: number}
  readonly p: Quantity
  readonly scheme: PermutationScheme
}

/**
 * Permutational analysis of variance on dissimilarities: do groups of samples differ in location? A
 * difference in spread can make it significant too: always beside dispersionTest.
 *
 * Formula: F = (SS_A/(a - 1))/(SS_W/(N - a)), SS_T = sum over pairs of d^2/N, SS_W = the same within each
 * group over its size, SS_A = SS_T - SS_W; with b blocks SS_A is that of groups after blocks (traces of
 * projections of Gower's matrix) and SS_W has N - a - b + 1 degrees of freedom: the one-factor F would leave the
 * differences between blocks, which no permutation within blocks can change, in its denominator. R2 is SS_A over
 * SS_T, blocks included. p by permutationTest on SS_A, which orders the arrangements as F does.
 *
 * Source: Anderson 2001, Austral Ecol. 26:32-46; McArdle & Anderson 2001, Ecology 82:290-297.
 *
 * Edge cases: fewer than two groups, no sample beyond one per group (and block), groups that coincide with
 * blocks, or no dissimilarity anywhere: not defined. No dissimilarity within groups leaves F undefined, but
 * not R2 and p.
 *
 * @throws RangeError where samples, groups and blocks differ in number.
 *
 * @example permanova([[0, 1, 3, 4], [1, 0, 2, 3], [3, 2, 0, 1], [4, 3, 1, 0]], ['a', 'a', 'b', 'b'], {limit: 99}).pseudoF // => {value: 18}
 * @example permanova([[0, 1, 3, 4], [1, 0, 2, 3], [3, 2, 0, 1], [4, 3, 1, 0]], ['a', 'a', 'b', 'b'], {limit: 99}).r2 // => {value: 0.9}
 * @example permanova([[0, 0, 0], [0, 0, 0], [0, 0, 0]], ['a', 'a', 'b'], {limit: 99}).p // => {notDefined: 'all samples are alike'}
 */
export function permanova(
  dissimilarities: readonly (readonly number[])[],
  groups: readonly (string | number)[],
  {blocks, limit, random}: PermutationOptions
): Permanova {
  if (groups.length !== dissimilarities.length) throw new RangeError('every sample needs its group')
  const plan = permutations(groups, {...(blocks && {blocks}), limit, random})
  const groupCount = plan.groups.length
  const blockCount = new Set(blocks ?? [0]).size
  const residualDf = groups.length - groupCount - blockCount + 1
  const total = trace(gowerCentred(dissimilarities))
  const afterBlocks = gowerCentred(dissimilarities, blocks)
  const available = trace(afterBlocks)
  const weights = inverseCrossProducts(plan.observed, groupCount, blocks)
  const explained = weights === undefined ? 0 : explainedBy(plan.observed, afterBlocks, weights, groupCount)
  const residual = available - explained
  const {distinct, exhaustive, tried, smallestP} = plan
  const common = {
    degreesOfFreedom: {groups: Math.max(0, groupCount - 1), residual: Math.max(0, residualDf)},
    sumOfSquares: {groups: explained, residual, total},
    scheme: {distinct, exhaustive, tried, smallestP}
  }
  const none = (notDefined: string): Permanova => ({
    pseudoF: {notDefined},
    r2: {notDefined},
    p: {notDefined},
    ...common
  })
  if (groupCount < 2) return none('there are fewer than two groups')
  if (weights === undefined) return none('the groups coincide with the blocks')
  if (residualDf < 1) return none('no sample is left to measure the spread by')
  if (!dissimilarities.some((row) => row.some((value) => value > 0))) return none('all samples are alike')
  const tolerance = 1e-9 * total
  const test = permutationTest({
    permutations: plan,
    statistic: (arrangement) => explainedBy(arrangement, afterBlocks, weights, groupCount),
    tolerance
  })
  return {
    pseudoF:
      residual > tolerance
        ? {value: explained / (groupCount - 1) / (residual / residualDf)}
        : {notDefined: 'the samples within groups do not differ'},
    r2: {value: explained / total},
    p: {value: test.p},
    ...common
  }
}

function trace(matrix: readonly (readonly number[])[]): number {
  return matrix.reduce((sum, row, index) => sum + row[index]!, 0)
}

/**
 * Inverse of the cross products of group indicators (all but the first group) within blocks: D'(I - H)D.
 * Sizes do not change when labels are permuted within blocks, and so neither does this. Undefined where it is
 * singular.
 */
function inverseCrossProducts(
  observed: readonly number[],
  groupCount: number,
  blocks: readonly (string | number)[] = observed.map(() => 0)
): readonly (readonly number[])[] | undefined {
  const products = Matrix.zeros(Math.max(0, groupCount - 1), Math.max(0, groupCount - 1))
  for (const block of new Set(blocks)) {
    const sizes = Array.from(
      {length: groupCount},
      (_, group) => observed.filter((other, unit) => other === group && blocks[unit] === block).length
    )
    const blockSize = sizes.reduce((sum, size) => sum + size, 0)
    for (let a = 1; a < groupCount; a += 1) {
      for (let b = 1; b < groupCount; b += 1) {
        const own = a === b ? sizes[a]! : 0
        products.set(a - 1, b - 1, products.get(a - 1, b - 1) + own - (sizes[a]! * sizes[b]!) / blockSize)
      }
    }
  }
  if (groupCount < 2) return []
  const singular = new SingularValueDecomposition(products).diagonal
  return Math.min(...singular) <= 1e-9 * Math.max(...singular) ? undefined : inverse(products).to2DArray()
}

/**
 * Trace of the projection onto the groups: sum of inverse[a][b] times the sum of inner products between a and
 * b.
 */
function explainedBy(
  arrangement: readonly number[],
  innerProducts: readonly (readonly number[])[],
  weights: readonly (readonly number[])[],
  groupCount: number
): number {
  const sums = Array.from({length: groupCount}, () => Array.from({length: groupCount}, () => 0))
  for (const [first, group] of arrangement.entries()) {
    const sumsOfGroup = sums[group]!
    const row = innerProducts[first]!
    for (let second = 0; second < arrangement.length; second += 1) {
      sumsOfGroup[arrangement[second]!]! += row[second]!
    }
  }
  let explained = 0
  for (const [a, row] of weights.entries()) {
    for (const [b, weight] of row.entries()) explained += weight * sums[a + 1]![b + 1]!
  }
  return explained
}
