import type {Quantity} from '../model/quantity.ts'
import {gowerCentred} from './gower-centred.ts'
import {permutationTest} from './permutation-test.ts'
import {type PermutationOptions, type PermutationScheme, permutations} from './permutations.ts'

export interface DispersionTest {
  readonly f: Quantity
  readonly degreesOfFreedom: {readonly groups: number; readonly residual: number}
  readonly p: Quantity
  /** Mean distance of the samples of each group to its centroid. */
  readonly meanDistances: readonly {
    readonly group: string | number
    readonly samples: number
    readonly distance: number
  }[]
  /** Distance of each sample to the centroid of its group. */
  readonly distances: readonly number[]
  /** Samples whose squared distance came out below zero and was set to zero. */
  readonly negativeSquares: number
  readonly scheme: PermutationScheme
}

/** What is done with squared distances below zero, in the words of a report. */
export const negativeSquareRule = 'squared distances to a centroid that come out below zero are set to zero'

/**
 * Do groups of samples differ in spread? Analysis of variance of the distances of samples to the centroid of
 * their group, in the space of all principal coordinates, imaginary ones included.
 *
 * Formula: z_i^2 = mean over the group of d_ij^2 - half the mean of d^2 over all its n^2 ordered pairs; F is
 * that of the analysis of variance of z. p: the deviations of the samples from their centroids are permuted
 * among the groups (within blocks, if any), centroids and z computed anew each time.
 *
 * Source: Anderson 2006, Biometrics 62:245-253 (deviations from centroids, permutation of residuals; from
 * memory).
 *
 * Edge cases: under measures such as Bray-Curtis z^2 can be negative: set to 0 (negativeSquareRule) and
 * counted. It keeps the order of the samples, where the root of the absolute value would make a sample that lies
 * nearer than any Euclidean space allows one that lies farther out. A group of one sample has no spread: not defined. Distances that do not vary within any group (as
 * in groups of two, whose samples lie equally far from their middle) leave F without a denominator: not
 * defined.
 *
 * @throws RangeError where samples, groups and blocks differ in number.
 *
 * @example dispersionTest([[0, 1, 3], [1, 0, 2], [3, 2, 0]], ['a', 'a', 'b'], {limit: 99}).f // => {notDefined: 'a group has only one sample'}
 * @example dispersionTest([[0, 2], [2, 0]], ['a', 'a'], {limit: 99}).meanDistances // => [{group: 'a', samples: 2, distance: 1}]
 */
export function dispersionTest(
  dissimilarities: readonly (readonly number[])[],
  groups: readonly (string | number)[],
  {blocks, limit, random}: PermutationOptions
): DispersionTest {
  if (groups.length !== dissimilarities.length) throw new RangeError('every sample needs its group')
  const plan = permutations(groups, {...(blocks && {blocks}), limit, random})
  const {distinct, exhaustive, tried, smallestP, observed} = plan
  const sizes = plan.groups.map((_, group) => observed.filter((other) => other === group).length)
  const squares = squaredDeviations(gowerCentred(dissimilarities, groups))
  const {distances, negativeSquares} = distancesToCentroids(squares, observed, sizes)
  const degreesOfFreedom = {
    groups: Math.max(0, sizes.length - 1),
    residual: Math.max(0, groups.length - sizes.length)
  }
  const common = {
    degreesOfFreedom,
    meanDistances: plan.groups.map((group, index) => {
      const own = distances.filter((_, sample) => observed[sample] === index)
      return {group, samples: own.length, distance: mean(own)}
    }),
    distances,
    negativeSquares,
    scheme: {distinct, exhaustive, tried, smallestP}
  }
  const none = (notDefined: string): DispersionTest => ({f: {notDefined}, p: {notDefined}, ...common})
  if (sizes.length < 2) return none('there are fewer than two groups')
  if (sizes.some((size) => size < 2)) return none('a group has only one sample')
  const f = varianceRatio(distances, observed, sizes)
  if (f === undefined) return none('the distances to the centroid do not vary within groups')
  const statistic = (arrangement: readonly number[]): number =>
    varianceRatio(distancesToCentroids(squares, arrangement, sizes).distances, arrangement, sizes) ??
    Number.POSITIVE_INFINITY
  const {p} = permutationTest({permutations: plan, statistic, tolerance: 1e-9 * (1 + f)})
  return {f: {value: f}, p: {value: p}, ...common}
}

/**
 * Squared distances between the deviations of samples from their centroids, from the inner products of these.
 */
function squaredDeviations(products: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return products.map((row, i) => row.map((value, j) => products[i]![i]! + products[j]![j]! - 2 * value))
}

function distancesToCentroids(
  squares: readonly (readonly number[])[],
  arrangement: readonly number[],
  sizes: readonly number[]
): {readonly distances: readonly number[]; readonly negativeSquares: number} {
  const sums = arrangement.map((group, sample) => {
    let sum = 0
    for (const [other, square] of squares[sample]!.entries()) if (arrangement[other] === group) sum += square
    return sum
  })
  const groupSums = sizes.map(() => 0)
  for (const [sample, group] of arrangement.entries()) groupSums[group]! += sums[sample]!
  let negativeSquares = 0
  const distances = arrangement.map((group, sample) => {
    const size = sizes[group]!
    const square = sums[sample]! / size - groupSums[group]! / (2 * size ** 2)
    // Rounding alone can leave a sample at its centroid below zero.
    if (square < -1e-9 * Math.abs(sums[sample]!)) negativeSquares += 1
    return Math.sqrt(Math.max(0, square))
  })
  return {distances, negativeSquares}
}

/** F of a one-way analysis of variance; undefined where nothing varies within groups. */
function varianceRatio(
  values: readonly number[],
  arrangement: readonly number[],
  sizes: readonly number[]
): number | undefined {
  const grand = mean(values)
  const means = sizes.map((_, group) =>
    mean(values.filter((_value, sample) => arrangement[sample] === group))
  )
  const within = values.reduce((sum, value, sample) => sum + (value - means[arrangement[sample]!]!) ** 2, 0)
  const between = means.reduce((sum, value, group) => sum + sizes[group]! * (value - grand) ** 2, 0)
  if (within <= 1e-18 * (1 + values.reduce((sum, value) => sum + value ** 2, 0))) return undefined
  return between / (sizes.length - 1) / (within / (values.length - sizes.length))
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
