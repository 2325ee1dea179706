import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {bergerParker} from '../../src/statistics/berger-parker.ts'
import {chao1} from '../../src/statistics/chao1.ts'
import {chao2} from '../../src/statistics/chao2.ts'
import {coverage} from '../../src/statistics/coverage.ts'
import {coverageAtSize} from '../../src/statistics/coverage-at-size.ts'
import {curveSizes} from '../../src/statistics/curve-sizes.ts'
import {frequencyCounts, incidenceCounts} from '../../src/statistics/frequency-counts.ts'
import {giniSimpson} from '../../src/statistics/gini-simpson.ts'
import {giniSimpsonUnbiased} from '../../src/statistics/gini-simpson-unbiased.ts'
import {hillAsymptotic} from '../../src/statistics/hill-asymptotic.ts'
import {hillObserved} from '../../src/statistics/hill-observed.ts'
import {hillProfile} from '../../src/statistics/hill-profile.ts'
import {pielou} from '../../src/statistics/pielou.ts'
import {rarefactionAndExtrapolation} from '../../src/statistics/rarefaction-and-extrapolation.ts'
import {shannon} from '../../src/statistics/shannon.ts'
import {shannonAsymptotic} from '../../src/statistics/shannon-asymptotic.ts'
import {sizeForCoverage} from '../../src/statistics/size-for-coverage.ts'
import {numberOf} from './number-of.ts'

const ones = (n: number) => new Array<number>(n).fill(1)

describe('an empty catch', () => {
  const empty = frequencyCounts([0, 0])

  test('has no diversity of any kind, and says so', () => {
    const none = {notDefined: 'no individuals were caught'}
    for (const statistic of [
      shannon,
      giniSimpson,
      pielou,
      bergerParker,
      chao1,
      coverage,
      shannonAsymptotic
    ]) {
      expect(statistic(empty)).toEqual(none)
    }
    expect(hillAsymptotic(empty)).toEqual({q0: none, q1: none, q2: none})
    for (const order of [0, 1, 2] as const) {
      expect(hillObserved(empty, order)).toEqual(none)
      expect(rarefactionAndExtrapolation(empty, order, 5)).toEqual(none)
    }
    expect(coverageAtSize(empty, 5)).toEqual(none)
    expect(sizeForCoverage(empty, 0.9)).toEqual(none)
    expect(isDefined(giniSimpsonUnbiased(empty))).toBe(false)
    expect(curveSizes(empty.size)).toEqual([])
  })

  test('of sampling units is worded for sampling units', () => {
    const none = {notDefined: 'no species was found in any sampling unit'}
    expect(chao2(incidenceCounts([], 6))).toEqual(none)
    expect(coverage(incidenceCounts([], 6))).toEqual(none)
    expect(hillObserved(incidenceCounts([], 0), 1)).toEqual(none)
  })
})

describe('one individual', () => {
  const one = frequencyCounts([1])

  test('is one species of every order, with no coverage and no bound to order 2', () => {
    for (const order of [0, 1, 2, 3.5, Number.POSITIVE_INFINITY])
      expect(hillObserved(one, order)).toEqual({value: 1})
    expect(coverage(one)).toEqual({
      notDefined: 'one individual says nothing about the species that were missed'
    })
    for (const estimate of Object.values(hillAsymptotic(one))) expect(isDefined(estimate)).toBe(false)
    expect(rarefactionAndExtrapolation(one, 2, 2)).toEqual({
      notDefined: 'the reference size is one individual'
    })
    expect(rarefactionAndExtrapolation(one, 2, 1)).toEqual({
      notDefined: 'the reference size is one individual'
    })
    expect(rarefactionAndExtrapolation(one, 0, 2)).toEqual({value: 1})
    expect(shannonAsymptotic(one)).toEqual({value: 0})
    expect(curveSizes(1)).toEqual([1, 2])
  })

  test('Chao1 names no other value where one more species caught twice would not change it', () => {
    // 4 + (1003/1004) 2 and 5 + (1005/1006) are both 6.00.
    const richness = chao1(frequencyCounts([1000, 2, 1, 1]))
    expect(isDefined(richness) && richness.caution).toBe('rests on 1 species caught twice')
  })

  test('adds nothing to the species seen, and Chao1 warns what it rests on', () => {
    const richness = chao1(one)
    expect(richness).toMatchObject({value: 1, standardError: 0, interval: {low: 1, high: 1}})
    // One more species caught twice: S 2, n 3, f1 1, f2 1 gives 2 + (2/3)/2.
    expect(isDefined(richness) && richness.caution).toBe(
      'rests on no species caught twice; one more such species would make it 2.33'
    )
  })
})

test('one sampling unit has no coverage', () => {
  expect(coverage(incidenceCounts([1, 1, 0], 1))).toEqual({
    notDefined: 'one sampling unit says nothing about the species that were missed'
  })
  expect(numberOf(chao2(incidenceCounts([1, 1], 1)))).toBe(2)
})

describe('one species', () => {
  const one = frequencyCounts([12])

  test('has one effective species at every order, size and coverage', () => {
    for (const order of [0, 1, 2] as const) {
      expect(hillObserved(one, order)).toEqual({value: 1})
      for (const size of [1, 5.5, 12, 24]) {
        expect(numberOf(rarefactionAndExtrapolation(one, order, size))).toBeCloseTo(1, 14)
      }
    }
    const {q0, q1, q2} = hillAsymptotic(one)
    expect([q0, q1, q2].map(numberOf)).toEqual([1, 1, 1])
    expect(coverage(one)).toEqual({value: 1})
    expect(pielou(one)).toEqual({notDefined: 'a single species has no evenness'})
    expect(shannon(one)).toEqual({value: 0})
  })
})

describe('a catch of singletons only', () => {
  const single = frequencyCounts(ones(10))

  test('has no coverage at any size, and no size for a coverage', () => {
    const none = {notDefined: 'every species was caught only once'}
    expect(coverage(single)).toEqual(none)
    expect(coverageAtSize(single, 5)).toEqual(none)
    expect(coverageAtSize(single, 20)).toEqual(none)
    expect(sizeForCoverage(single, 0.5)).toEqual(none)
  })

  test('has no bound to order 2: not defined as an estimate, with a caution where extrapolated', () => {
    expect(hillAsymptotic(single).q2).toEqual({
      notDefined: 'no species was caught more than once, so that the estimate has no bound'
    })
    expect(rarefactionAndExtrapolation(single, 2, 15)).toEqual({
      value: 15,
      caution: 'grows without bound, because no species was caught more than once'
    })
    expect(rarefactionAndExtrapolation(single, 2, 7)).toEqual({value: 7})
  })

  test('has the form of Chao1 without doubletons', () => {
    const richness = chao1(single)
    expect(numberOf(richness)).toBeCloseTo(10 + (0.9 * 10 * 9) / 2, 12)
    // k f1 (f1-1)/2 + k^2 f1 (2 f1-1)^2/4 - k^2 f1^4/(4 Chao1), by hand.
    const variance = (0.9 * 90) / 2 + (0.81 * 10 * 361) / 4 - (0.81 * 10_000) / (4 * 50.5)
    expect(isDefined(richness) && richness.standardError).toBeCloseTo(Math.sqrt(variance), 12)
  })

  test('of sampling units is worded for sampling units', () => {
    const uniques = incidenceCounts(ones(4), 6)
    expect(coverage(uniques)).toEqual({notDefined: 'every species was found in only one sampling unit'})
    expect(hillAsymptotic(uniques).q2).toEqual({
      notDefined: 'no species was found in more than one sampling unit, so that the estimate has no bound'
    })
  })
})

describe('a catch without singletons', () => {
  const complete = frequencyCounts([30, 20, 5, 4, 3])

  test('is taken to be complete', () => {
    expect(coverage(complete)).toEqual({value: 1})
    expect(chao1(complete)).toMatchObject({value: 5, standardError: 0, interval: {low: 5, high: 5}})
    expect(isDefined(chao1(complete)) && 'caution' in chao1(complete)).toBe(false)
    expect(rarefactionAndExtrapolation(complete, 0, 124)).toEqual({value: 5})
    expect(coverageAtSize(complete, 100)).toEqual({value: 1})
  })

  test('reaches a coverage of 1 at its own size', () => {
    expect(sizeForCoverage(complete, 1)).toEqual({value: 62})
  })
})

test('a single singleton without doubletons has a coverage of 1 by the formula', () => {
  const sample = frequencyCounts([5, 4, 1])
  expect(coverage(sample)).toEqual({value: 1})
  // Between 1 - f1/n at n - 1 and 1 at n.
  expect(numberOf(coverageAtSize(sample, 9))).toBeCloseTo(0.9, 14)
  expect(numberOf(sizeForCoverage(sample, 0.95))).toBeCloseTo(9.5, 12)
})

test('richness is not extrapolated beyond twice the reference size, orders 1 and 2 are', () => {
  const sample = frequencyCounts([5, 3, 2, 1, 1])
  expect(isDefined(rarefactionAndExtrapolation(sample, 0, 24))).toBe(true)
  expect(isDefined(rarefactionAndExtrapolation(sample, 0, 24.1))).toBe(false)
  expect(isDefined(rarefactionAndExtrapolation(sample, 1, 240))).toBe(true)
  expect(isDefined(rarefactionAndExtrapolation(sample, 2, 240))).toBe(true)
})

test('extrapolation goes to the asymptotic estimates', () => {
  const sample = frequencyCounts([9, 7, 3, 2, 2, 2, 1, 1, 1])
  const {q1, q2} = hillAsymptotic(sample)
  expect(numberOf(rarefactionAndExtrapolation(sample, 1, 1e12))).toBeCloseTo(numberOf(q1), 8)
  expect(numberOf(rarefactionAndExtrapolation(sample, 2, 1e12))).toBeCloseTo(numberOf(q2), 8)
  expect(numberOf(coverageAtSize(sample, 1e6))).toBe(1)
})

test('diversity below the reference size is linear between whole sizes', () => {
  const sample = frequencyCounts([9, 7, 3, 2, 2, 2, 1, 1, 1])
  for (const order of [0, 1, 2] as const) {
    const [low, middle, high] = [7, 7.25, 8].map((m) =>
      numberOf(rarefactionAndExtrapolation(sample, order, m))
    )
    expect(middle).toBeCloseTo(0.75 * low! + 0.25 * high!, 14)
  }
})

test('estimates that cross are withheld together', () => {
  const small = {notDefined: 'the sample is too small for asymptotic diversity'}
  expect(hillAsymptotic(frequencyCounts([2, 2, 2, 2]))).toEqual({q0: small, q1: small, q2: small})
})

test('Chao1 with five doubletons carries no caution', () => {
  expect('caution' in chao1(frequencyCounts([2, 2, 2, 2, 2, 1, 1]))).toBe(false)
  expect('caution' in chao1(frequencyCounts([2, 2, 2, 2, 1, 1]))).toBe(true)
})

test('counts that are not counts are refused', () => {
  for (const counts of [[-1], [0.5], [Number.NaN], [2 ** 60]])
    expect(() => frequencyCounts(counts)).toThrow(RangeError)
  expect(() => incidenceCounts([4], 3)).toThrow(RangeError)
  expect(() => hillObserved(frequencyCounts([1]), -1)).toThrow(RangeError)
  expect(() => rarefactionAndExtrapolation(frequencyCounts([1]), 0, 0)).toThrow(RangeError)
  expect(() => coverageAtSize(frequencyCounts([2]), -1)).toThrow(RangeError)
  expect(() => sizeForCoverage(frequencyCounts([2]), 1.1)).toThrow(RangeError)
})

describe('sizes of a curve', () => {
  test('are up to sixty whole numbers from 1 to twice the reference size, and contain it', () => {
    for (const n of [60, 168, 2500, 1_000_000]) {
      const sizes = curveSizes(n)
      expect(sizes.length).toBeLessThanOrEqual(60)
      expect(sizes.length).toBeGreaterThan(50)
      expect(sizes[0]).toBe(1)
      expect(sizes).toContain(n)
      expect(sizes.at(-1)).toBe(2 * n)
      expect(sizes.every((size, i) => Number.isInteger(size) && (i === 0 || size > sizes[i - 1]!))).toBe(true)
    }
  })

  test('stand denser at the start and at the reference size than between them and at the end', () => {
    const sizes = curveSizes(10_000)
    const at = sizes.indexOf(10_000)
    const middle = sizes.findIndex((size) => size > 3000)
    expect(sizes[at]! - sizes[at - 1]!).toBeLessThan(sizes[middle]! - sizes[middle - 1]!)
    expect(sizes[1]! - sizes[0]!).toBeLessThan(sizes[middle]! - sizes[middle - 1]!)
    expect(sizes[at + 1]! - sizes[at]!).toBeLessThan(sizes.at(-1)! - sizes.at(-2)!)
  })
})

test('a profile runs from order 0 to 3 and meets the three Hill numbers on its way', () => {
  const sample = frequencyCounts([9, 7, 3, 2, 2, 2, 1, 1, 1])
  const profile = hillProfile(sample)
  expect(profile).toHaveLength(31)
  expect([0, 10, 20, 30].map((i) => profile[i]!.order)).toEqual([0, 1, 2, 3])
  for (const i of [0, 10, 20]) expect(profile[i]!.diversity).toEqual(hillObserved(sample, i / 10))
})
