import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {kruskalWallis} from '../../src/statistics/kruskal-wallis.ts'
import {kruskalWallisPermutation} from '../../src/statistics/kruskal-wallis-permutation.ts'
import {likelihoodRatioPermutation} from '../../src/statistics/likelihood-ratio-permutation.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {numberOf} from './number-of.ts'

const options = {limit: 999, random: randomStream(1, 'habitats')}
const groups = ['a', 'a', 'a', 'a', 'b', 'b', 'b', 'b']
const efforts = [28, 42, 35, 42, 40, 28, 42, 42]
const counts = fc.array(fc.integer({min: 1, max: 90}), {minLength: 8, maxLength: 8})

describe('the likelihood-ratio test by permutation', () => {
  test('does not change with the order of sites, the unit of effort or the names of habitats', () => {
    fc.assert(
      fc.property(counts, (caught) => {
        const forward = likelihoodRatioPermutation({counts: caught, efforts, groups}, options)
        const turned = likelihoodRatioPermutation(
          {
            counts: [...caught].reverse(),
            efforts: [...efforts].reverse().map((effort) => effort * 10),
            groups: [...groups].reverse().map((group) => `${group}!`)
          },
          options
        )
        expect(numberOf(turned.p)).toBe(numberOf(forward.p))
        expect(numberOf(turned.statistic)).toBeCloseTo(numberOf(forward.statistic), 5)
      }),
      {numRuns: 15}
    )
  })

  test('of two habitats with three sites each cannot go below p 0.10, and says so', () => {
    const data = {
      counts: [1, 2, 1, 100, 90, 120],
      efforts: [9, 9, 9, 9, 9, 9],
      groups: ['a', 'a', 'a', 'b', 'b', 'b']
    }
    const {p, scheme, degreesOfFreedom} = likelihoodRatioPermutation(data, options)
    expect(p).toEqual({value: 0.1})
    expect(scheme).toMatchObject({distinct: 10, smallestP: 0.1})
    expect(degreesOfFreedom).toBe(1)
  })

  test('gives p 1 where all rates are the same', () => {
    const data = {counts: [6, 12, 6, 12], efforts: [10, 20, 10, 20], groups: ['a', 'a', 'b', 'b']}
    const {p, statistic} = likelihoodRatioPermutation(data, options)
    expect(p).toEqual({value: 1})
    expect(numberOf(statistic)).toBeCloseTo(0, 6)
  })

  test('permutes within blocks', () => {
    const data = {
      counts: [5, 9, 50, 88, 20, 41, 8, 13],
      efforts: efforts.map(() => 40),
      groups: ['a', 'b', 'a', 'b', 'a', 'b', 'a', 'b'],
      blocks: [1, 1, 2, 2, 3, 3, 4, 4]
    }
    const {p, scheme} = likelihoodRatioPermutation(data, options)
    // Habitat b leads in every block: one of the 2^4/2 arrangements.
    expect(scheme.distinct).toBe(8)
    expect(p).toEqual({value: 1 / 8})
  })

  test('copes with arrangements that leave a habitat without catch', () => {
    const data = {
      counts: [0, 0, 7, 0, 9, 11],
      efforts: [9, 9, 9, 9, 9, 9],
      groups: ['a', 'a', 'a', 'b', 'b', 'b']
    }
    const {p, failed} = likelihoodRatioPermutation(data, options)
    expect(failed).toBeUndefined()
    expect(numberOf(p)).toBeGreaterThanOrEqual(0.1)
  })

  test('gives the reason where there is no model', () => {
    const empty = likelihoodRatioPermutation(
      {counts: [0, 0, 0, 0], efforts: [1, 1, 1, 1], groups: ['a', 'a', 'b', 'b']},
      options
    )
    expect(empty).toMatchObject({failed: 'no catch', p: {notDefined: 'nothing was caught anywhere'}})
    const one = likelihoodRatioPermutation({counts: [1, 2], efforts: [1, 1], groups: ['a', 'a']}, options)
    expect(one.p).toEqual({notDefined: 'there are fewer than two groups'})
    expect(() =>
      likelihoodRatioPermutation(
        {counts: [1, 2, 3, 4], efforts: [1, 0, 1, 1], groups: ['a', 'a', 'b', 'b']},
        options
      )
    ).toThrow(RangeError)
  })

  test('rejects about as often as it says where habitats do not differ', () => {
    const random = randomStream(11, 'level')
    let rejected = 0
    const seasons = 200
    for (let season = 0; season < seasons; season += 1) {
      const caught = efforts.map((effort) => Math.floor(-Math.log(1 - random.uniform()) * effort))
      const {p} = likelihoodRatioPermutation({counts: caught, efforts, groups}, options)
      if (isDefined(p) && p.value <= 0.1) rejected += 1
    }
    // p in steps of 1/35: at most 3/35 of seasons, plus three standard errors.
    expect(rejected / seasons).toBeLessThan(3 / 35 + 3 * Math.sqrt(0.08 / seasons))
  })
})

describe('Kruskal-Wallis', () => {
  test('does not change with a rising transformation or the order of values', () => {
    fc.assert(
      fc.property(counts, (values) => {
        const plain = kruskalWallis(values, groups).statistic
        const logs = kruskalWallis(values.map(Math.log), groups).statistic
        const turned = kruskalWallis([...values].reverse(), [...groups].reverse()).statistic
        expect(logs).toEqual(plain)
        if (isDefined(plain)) expect(numberOf(turned)).toBeCloseTo(plain.value, 10)
      })
    )
  })

  test('of all ties is not defined, by formula or by permutation', () => {
    expect(kruskalWallis([0, 0, 0], ['a', 'b', 'b']).chiSquareP).toEqual({notDefined: 'all values are tied'})
    expect(kruskalWallisPermutation([0, 0, 0], ['a', 'b', 'b'], options).p).toEqual({
      notDefined: 'all values are tied'
    })
  })

  test('of nothing, or of one group, is not defined', () => {
    expect(kruskalWallis([], []).statistic).toEqual({notDefined: 'there are fewer than two groups'})
    expect(kruskalWallis([1, 2], ['a', 'a']).statistic).toEqual({
      notDefined: 'there are fewer than two groups'
    })
    expect(() => kruskalWallis([1], [])).toThrow(RangeError)
  })

  test('is the fallback for a habitat without catch', () => {
    const rates = [0, 0, 0, 0, 3, 4, 1, 9]
    const {p, statistic} = kruskalWallisPermutation(rates, groups, options)
    expect(p).toEqual({value: 1 / 35})
    expect(isDefined(statistic)).toBe(true)
  })
})
