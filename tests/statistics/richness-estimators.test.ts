import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {ace} from '../../src/statistics/ace.ts'
import {chao2} from '../../src/statistics/chao2.ts'
import {
  type FrequencyCounts,
  frequencyCounts,
  incidenceCounts
} from '../../src/statistics/frequency-counts.ts'
import {ice} from '../../src/statistics/ice.ts'
import {infrequentEstimate} from '../../src/statistics/infrequent-estimate.ts'
import {jackknife1} from '../../src/statistics/jackknife-1.ts'
import {jackknife2} from '../../src/statistics/jackknife-2.ts'
import {numberOf} from './number-of.ts'
import {girdled} from './spider-demonstration-set.ts'

const matrices = fc
  .tuple(fc.integer({min: 2, max: 7}), fc.integer({min: 1, max: 9}))
  .chain(([units, species]) =>
    fc.array(fc.array(fc.boolean(), {minLength: species, maxLength: species}), {
      minLength: units,
      maxLength: units
    })
  )
  .filter((units) => units.some((unit) => unit.includes(true)))

const countsOf = (units: readonly (readonly boolean[])[]) =>
  incidenceCounts(
    units[0]!.map((_, j) => units.filter((unit) => unit[j]).length),
    units.length
  )

const richness = (units: readonly (readonly boolean[])[]) => countsOf(units).species

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

describe('the jackknife', () => {
  test('of first order is that of leaving out each unit in turn', () => {
    fc.assert(
      fc.property(matrices, (units) => {
        const t = units.length
        const without = mean(units.map((_, i) => richness(units.filter((_, j) => j !== i))))
        // Burnham & Overton 1978: T S - (T-1) mean S without one.
        expect(numberOf(jackknife1(countsOf(units)))).toBeCloseTo(t * richness(units) - (t - 1) * without, 10)
      }),
      {seed: 1}
    )
  })

  test('of second order is that of leaving out each pair of units in turn', () => {
    fc.assert(
      fc.property(
        matrices.filter((units) => units.length > 2),
        (units) => {
          const t = units.length
          const one = mean(units.map((_, i) => richness(units.filter((_, j) => j !== i))))
          const pairs = units
            .flatMap((_, i) => units.map((_, j) => [i, j] as const))
            .filter(([i, j]) => i < j)
          const two = mean(pairs.map(([i, j]) => richness(units.filter((_, k) => k !== i && k !== j))))
          // Burnham & Overton 1978: (T^2 S - 2 (T-1)^2 mean S without one + (T-2)^2 mean S without two) / 2.
          const expected = (t ** 2 * richness(units) - 2 * (t - 1) ** 2 * one + (t - 2) ** 2 * two) / 2
          expect(numberOf(jackknife2(countsOf(units)))).toBeCloseTo(expected, 9)
        }
      ),
      {seed: 1}
    )
  })

  test('has the variance of its weights', () => {
    // S 6, Q1 3, Q2 1, T 5: estimate 3 (1.8) + 1 + 2 = 8.4; variance 3 (3.24) + 1 + 2 - 8.4 = 4.32.
    const first = jackknife1(incidenceCounts([1, 1, 1, 2, 4, 5], 5))
    expect(first).toMatchObject({
      interval: {method: 'estimate ± 1.96 standard errors, Burnham & Overton 1978'}
    })
    expect(numberOf(first)).toBeCloseTo(8.4, 12)
    expect(isDefined(first) && first.standardError).toBeCloseTo(Math.sqrt(4.32), 12)
    expect(isDefined(first) && first.interval!.low).toBe(6)
  })

  test('of one unit, or of nothing, is not defined', () => {
    for (const jackknife of [jackknife1, jackknife2]) {
      expect(isDefined(jackknife(incidenceCounts([1, 1], 1)))).toBe(false)
      expect(jackknife(incidenceCounts([], 4))).toEqual({
        notDefined: 'no species was found in any sampling unit'
      })
    }
  })
})

describe('Chao2', () => {
  test('counts sampling units where Chao1 counts individuals', () => {
    // k 4/5, Q1 3, Q2 1: 6 + 0.8 (9/2) = 9.6; variance 0.8 (9/2) + 0.64 (27) + 0.64 (81/4) = 33.84.
    const estimate = chao2(incidenceCounts([1, 1, 1, 2, 4, 5], 5))
    expect(numberOf(estimate)).toBeCloseTo(9.6, 12)
    expect(isDefined(estimate) && estimate.standardError).toBeCloseTo(Math.sqrt(33.84), 12)
    // One more duplicate: 7 + 0.8 (9/4) = 8.8.
    expect(isDefined(estimate) && estimate.caution).toBe(
      'rests on 1 species found in exactly two sampling units; one more such species would make it 8.8'
    )
  })

  test('without duplicates takes its other form', () => {
    expect(numberOf(chao2(incidenceCounts([1, 1, 1, 3], 4)))).toBeCloseTo(4 + (0.75 * 3 * 2) / 2, 12)
  })
})

describe('ACE', () => {
  test('of the girdled spiders is what its formula gives by hand', () => {
    // Rare: 9,8,6,6,4, four 2s, twelve 1s: R 21, N 53, f1 12; C 41/53; sum k(k-1) 72+56+30+30+12+8 = 208.
    const covered = 41 / 53
    const spread = Math.max(0, ((21 / covered) * 208) / (53 * 52) - 1)
    expect(numberOf(ace(frequencyCounts(girdled)))).toBeCloseTo(
      5 + 21 / covered + (12 / covered) * spread,
      12
    )
  })

  test('is not defined where every rare individual is a singleton, and is S without rare species', () => {
    expect(ace(frequencyCounts([40, 11, 1, 1]))).toEqual({
      notDefined: 'every rare species was caught only once'
    })
    expect(ace(frequencyCounts([1]))).toEqual({notDefined: 'every rare species was caught only once'})
    expect(ace(frequencyCounts([40, 11]))).toMatchObject({
      value: 2,
      standardError: 0,
      interval: {low: 2, high: 2}
    })
    expect(numberOf(ace(frequencyCounts([40, 4, 3])))).toBe(3)
    expect(ace(frequencyCounts([]))).toEqual({notDefined: 'no individuals were caught'})
  })
})

describe('ICE', () => {
  const units = (holders: readonly (readonly number[])[], count: number, species: number) =>
    Array.from({length: count}, (_, unit) =>
      Array.from({length: species}, (_, j) => holders[j]!.includes(unit))
    )

  test('counts only the units that hold an infrequent species in its variation', () => {
    // Twelve units; one species in all of them; infrequent ones in units 0 to 3 only: Y = 3, 2, 1, 1; N 7, Q1 2.
    const presence = units([[...Array(12).keys()], [0, 1, 2], [0, 1], [0], [3]], 12, 5)
    const covered = 5 / 7
    const spread = (4 / covered) * (4 / 3) * (8 / 49) - 1
    expect(numberOf(ice(presence))).toBeCloseTo(1 + 4 / covered + (2 / covered) * Math.max(0, spread), 12)
  })

  test('is not defined where every infrequent species is in one unit only, or without species', () => {
    expect(
      isDefined(
        ice([
          [true, false],
          [false, true]
        ])
      )
    ).toBe(false)
    expect(ice([])).toEqual({notDefined: 'no species was found in any sampling unit'})
    expect(ice([[false], [false]])).toEqual({notDefined: 'no species was found in any sampling unit'})
  })
})

test('standard errors of ACE and ICE follow from numerical derivatives', () => {
  const withClass = (sample: FrequencyCounts, count: number, more: number): FrequencyCounts => ({
    ...sample,
    species: sample.species + more,
    singletons: sample.singletons + (count === 1 ? more : 0),
    classes: sample.classes.map((c) => (c.count === count ? {count, species: c.species + more} : c))
  })
  for (const [counts, holding] of [
    [girdled, undefined],
    [[3, 2, 2, 1, 1, 1, 1, 9, 30], undefined],
    [[30, 10, 9, 4, 1, 1, 2, 3], 22]
  ] as const) {
    const sample = frequencyCounts(counts)
    const {value, variance} = infrequentEstimate(sample, 10, holding)
    const step = 1e-4
    const slopes = sample.classes.map(
      ({count}) =>
        (infrequentEstimate(withClass(sample, count, step), 10, holding).value -
          infrequentEstimate(withClass(sample, count, -step), 10, holding).value) /
        (2 * step)
    )
    const squares = sample.classes.reduce((sum, {species}, i) => sum + species * slopes[i]! ** 2, 0)
    const total = sample.classes.reduce((sum, {species}, i) => sum + species * slopes[i]!, 0)
    expect(variance).toBeCloseTo(squares - total ** 2 / value, 5)
  }
})
