import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {brayCurtis} from '../../src/statistics/bray-curtis.ts'
import {dispersionSizeBias} from '../../src/statistics/dispersion-size-bias.ts'
import {dispersionTest, negativeSquareRule} from '../../src/statistics/dispersion-test.ts'
import {dissimilarityMatrix} from '../../src/statistics/dissimilarity-matrix.ts'
import {permanova} from '../../src/statistics/permanova.ts'
import {permutations} from '../../src/statistics/permutations.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {numberOf} from './number-of.ts'

const random = randomStream(1, 'composition')
const options = {limit: 999, random}

function distancesOf(values: readonly number[]): readonly (readonly number[])[] {
  return values.map((a) => values.map((b) => Math.abs(a - b)))
}

function brayCurtisOf(samples: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const result = dissimilarityMatrix(samples, brayCurtis)
  if ('notDefined' in result) throw new Error(result.notDefined)
  return result.matrix
}

const sample = fc
  .array(fc.integer({min: 0, max: 30}), {minLength: 4, maxLength: 4})
  .filter((counts) => counts.some((count) => count > 0))

describe('permanova', () => {
  test('does not change with the order of samples', () => {
    fc.assert(
      fc.property(fc.array(sample, {minLength: 6, maxLength: 6}), (samples) => {
        const groups = ['a', 'b', 'a', 'b', 'a', 'b']
        const forward = permanova(brayCurtisOf(samples), groups, options)
        const backward = permanova(brayCurtisOf([...samples].reverse()), [...groups].reverse(), options)
        expect(isDefined(forward.p)).toBe(isDefined(backward.p))
        if (!isDefined(forward.p)) return
        expect(numberOf(backward.p)).toBe(forward.p.value)
        expect(numberOf(backward.r2)).toBeCloseTo(numberOf(forward.r2), 10)
      }),
      {numRuns: 50}
    )
  })

  test('has the sums of squares of distances within groups and in all', () => {
    fc.assert(
      fc.property(fc.array(sample, {minLength: 7, maxLength: 7}), (samples) => {
        const groups = ['a', 'b', 'a', 'b', 'c', 'c', 'c']
        const matrix = brayCurtisOf(samples)
        const within = (members: readonly number[]) =>
          members
            .flatMap((i) => members.map((j) => matrix[i]![j]! ** 2))
            .reduce((sum, square) => sum + square, 0) /
          (2 * members.length)
        const {sumOfSquares} = permanova(matrix, groups, options)
        expect(sumOfSquares.total).toBeCloseTo(within([0, 1, 2, 3, 4, 5, 6]), 10)
        expect(sumOfSquares.residual).toBeCloseTo(within([0, 2]) + within([1, 3]) + within([4, 5, 6]), 10)
      }),
      {numRuns: 50}
    )
  })

  test('of two habitats with three sites each cannot go below p 0.10', () => {
    const result = permanova(distancesOf([0, 1, 2, 100, 101, 102]), ['a', 'a', 'a', 'b', 'b', 'b'], options)
    expect(result.p).toEqual({value: 0.1})
    expect(result.scheme).toMatchObject({distinct: 10, smallestP: 0.1, exhaustive: true})
  })

  test('with blocks is the analysis of variance of groups after blocks', () => {
    // Two by three: blocks add 0, 10, 20 and the group 1, with errors that add up to nothing in rows and columns.
    const values = [0 + 0.1, 10 - 0.1, 20 + 0, 1 - 0.1, 11 + 0.1, 21 + 0]
    const result = permanova(distancesOf(values), ['a', 'a', 'a', 'b', 'b', 'b'], {
      ...options,
      blocks: [1, 2, 3, 1, 2, 3]
    })
    // Group sum of squares 6 x 0.5^2, residual 4 x 0.1^2 on 2 degrees of freedom.
    expect(result.sumOfSquares.groups).toBeCloseTo(1.5, 10)
    expect(result.sumOfSquares.residual).toBeCloseTo(0.04, 10)
    expect(numberOf(result.pseudoF)).toBeCloseTo(1.5 / 0.02, 6)
    expect(result.scheme.distinct).toBe(4)
    expect(numberOf(result.p)).toBe(0.25)
  })

  test('is not defined where the design cannot answer', () => {
    const matrix = distancesOf([1, 2, 3, 4])
    expect(permanova(matrix, ['a', 'a', 'a', 'a'], options).p).toEqual({
      notDefined: 'there are fewer than two groups'
    })
    expect(permanova(matrix, ['a', 'b', 'c', 'd'], options).pseudoF).toEqual({
      notDefined: 'no sample is left to measure the spread by'
    })
    expect(permanova(matrix, ['a', 'a', 'b', 'b'], {...options, blocks: [1, 1, 2, 2]}).p).toEqual({
      notDefined: 'the groups coincide with the blocks'
    })
    expect(permanova(distancesOf([2, 2, 2, 2]), ['a', 'a', 'b', 'b'], options).r2).toEqual({
      notDefined: 'all samples are alike'
    })
    expect(() => permanova(matrix, ['a', 'b'], options)).toThrow(RangeError)
  })

  test('of samples that are alike within groups has R2 and p, but no F', () => {
    const result = permanova(distancesOf([1, 1, 1, 5, 5, 5]), ['a', 'a', 'a', 'b', 'b', 'b'], options)
    expect(result.pseudoF).toEqual({notDefined: 'the samples within groups do not differ'})
    expect(numberOf(result.r2)).toBeCloseTo(1, 12)
    expect(result.p).toEqual({value: 0.1})
  })
})

describe('the dispersion test', () => {
  test('of one variable is the analysis of variance of distances to group means, residuals permuted', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({min: 0, max: 500}), {minLength: 7, maxLength: 7}), (values) => {
        const groups = [0, 0, 0, 1, 1, 1, 1]
        const result = dispersionTest(distancesOf(values), groups, options)
        const byHand = permutedByHand(values, groups)
        expect(isDefined(result.f)).toBe(byHand !== undefined)
        if (byHand === undefined) return
        expect(numberOf(result.f) / byHand.f || 1).toBeCloseTo(1, 6)
        expect(numberOf(result.p)).toBeCloseTo(byHand.p, 10)
      }),
      {numRuns: 60}
    )
  })

  test('finds the wide group wider', () => {
    const values = [-1, 0, 1, 2, 3, -40, -20, 0, 20, 40]
    const result = dispersionTest(distancesOf(values), [0, 0, 0, 0, 0, 1, 1, 1, 1, 1], options)
    expect(result.meanDistances).toEqual([
      {group: 0, samples: 5, distance: 1.2},
      {group: 1, samples: 5, distance: 24}
    ])
    expect(numberOf(result.p)).toBeLessThan(0.05)
  })

  test('does not see where a group lies', () => {
    const near = dispersionTest(distancesOf([0, 1, 5, 0, 2, 3]), [0, 0, 0, 1, 1, 1], options)
    const far = dispersionTest(distancesOf([0, 1, 5, 900, 902, 903]), [0, 0, 0, 1, 1, 1], options)
    expect(numberOf(far.f)).toBeCloseTo(numberOf(near.f), 8)
    expect(far.p).toEqual(near.p)
  })

  test('sets squared distances below zero to zero, and counts them', () => {
    // The third sample is nearer to the other two than they are to one another: no such triangle exists.
    const matrix = [
      [0, 1, 0.2],
      [1, 0, 0.2],
      [0.2, 0.2, 0]
    ]
    const doubled = [0, 1].flatMap((half) =>
      matrix.map((row) => [
        ...row.map((v) => (half === 0 ? v : 0.9)),
        ...row.map((v) => (half === 1 ? v : 0.9))
      ])
    )
    const result = dispersionTest(doubled, ['a', 'a', 'a', 'b', 'b', 'b'], options)
    // (0.04 + 0.04 + 0)/3 less half the mean of all nine squares, (1 + 1 + 4 x 0.04)/18.
    expect((0.04 + 0.04) / 3 - 2.16 / 18).toBeLessThan(0)
    expect(result.distances[2]).toBe(0)
    expect(result.negativeSquares).toBe(2)
    expect(negativeSquareRule).toMatch(/set to zero/)
  })

  test('is not defined for a group of one sample, one group, or groups of pairs', () => {
    const matrix = distancesOf([1, 2, 5, 9])
    expect(dispersionTest(matrix, ['a', 'a', 'a', 'b'], options).f).toEqual({
      notDefined: 'a group has only one sample'
    })
    expect(dispersionTest(matrix, ['a', 'a', 'a', 'a'], options).p).toEqual({
      notDefined: 'there are fewer than two groups'
    })
    expect(dispersionTest(matrix, ['a', 'a', 'b', 'b'], options).f).toEqual({
      notDefined: 'the distances to the centroid do not vary within groups'
    })
  })
})

test('p of a permanova is too small where the small groups are the spread-out ones', () => {
  expect(dispersionSizeBias([3, 4, 10], [0.5, 0.4, 0.1])).toBe('too small')
  expect(dispersionSizeBias([3, 4, 10], [0.1, 0.4, 0.5])).toBe('too large')
  expect(dispersionSizeBias([4], [0.4])).toBe('unclear')
})

/** Deviations from group means permuted among groups; distances to the means of what they landed in. */
function permutedByHand(values: readonly number[], groups: readonly number[]) {
  const means = (list: readonly number[], labels: readonly number[]) =>
    [0, 1].map((group) => {
      const own = list.filter((_, index) => labels[index] === group)
      return own.reduce((sum, value) => sum + value, 0) / own.length
    })
  const deviations = values.map((value, index) => value - means(values, groups)[groups[index]!]!)
  const f = (labels: readonly number[]): number | undefined => {
    const centres = means(deviations, labels)
    const z = deviations.map((value, index) => Math.abs(value - centres[labels[index]!]!))
    const zMeans = means(z, labels)
    const grand = z.reduce((sum, value) => sum + value, 0) / z.length
    const within = z.reduce((sum, value, index) => sum + (value - zMeans[labels[index]!]!) ** 2, 0)
    const between = labels.reduce((sum, label) => sum + (zMeans[label]! - grand) ** 2, 0)
    return within < 1e-9 ? undefined : between / (within / 5)
  }
  const observed = f(groups)
  if (observed === undefined) return undefined
  const every = [...permutations(groups, {limit: 999, random}).arrangements()]
  const reached = every.filter(
    (labels) => (f(labels) ?? Number.POSITIVE_INFINITY) >= observed - 1e-9 * (1 + observed)
  )
  return {f: observed, p: reached.length / every.length}
}
