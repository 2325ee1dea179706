import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {countLogLikelihood} from '../../src/statistics/count-log-likelihood.ts'
import {countQuantile} from '../../src/statistics/count-quantile.ts'
import {effortForPrecision} from '../../src/statistics/effort-for-precision.ts'
import {likelihoodRatioPermutation} from '../../src/statistics/likelihood-ratio-permutation.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {smallestDetectableRatio} from '../../src/statistics/smallest-detectable-ratio.ts'
import {studentQuantile} from '../../src/statistics/special-functions.ts'
import {numberOf} from './number-of.ts'

const mean = fc.double({min: 0.01, max: 60, noNaN: true})
const theta = fc.oneof(fc.double({min: 0.05, max: 50, noNaN: true}), fc.constant(Number.POSITIVE_INFINITY))

describe('the quantile of a count', () => {
  test('is the first count whose probabilities add up to p', () => {
    fc.assert(
      fc.property(mean, theta, fc.double({min: 0, max: 0.999, noNaN: true}), (mu, k, p) => {
        const quantile = countQuantile(p, mu, k)
        let below = 0
        for (let count = 0; count < quantile; count += 1)
          below += Math.exp(countLogLikelihood([count], [mu], k))
        const reached = below + Math.exp(countLogLikelihood([quantile], [mu], k))
        expect(reached).toBeGreaterThanOrEqual(p - 1e-9)
        if (quantile > 0) expect(below).toBeLessThan(p + 1e-9)
      }),
      {numRuns: 60}
    )
  })

  test('does not fall where the mean rises', () => {
    fc.assert(
      fc.property(mean, theta, fc.double({min: 0, max: 0.999, noNaN: true}), (mu, k, p) => {
        expect(countQuantile(p, mu * 1.3, k)).toBeGreaterThanOrEqual(countQuantile(p, mu, k))
      })
    )
  })

  test('stands means in the hundred thousands', () => {
    expect(Math.abs(countQuantile(0.5, 250_000, Number.POSITIVE_INFINITY) - 250_000)).toBeLessThan(2)
    expect(countQuantile(0.999_999, 250_000, 0.3)).toBeGreaterThan(1_000_000)
  })

  test('is refused for p of 1', () => {
    expect(() => countQuantile(1, 3, 2)).toThrow(RangeError)
  })
})

describe('the smallest detectable ratio', () => {
  const groups = Array.from({length: 8}, (_, unit) => (unit % 2 === 0 ? 'a' : 'b'))
  const layout = {expected: groups.map(() => 20), groups, raised: 'b', theta: 8}
  const options = () => ({random: randomStream(1, 'plan'), simulations: 200})

  const threeAndSix = ['a', 'a', 'a', 'b', 'b', 'b', 'b', 'b', 'b']
  test.each([
    ['two habitats of four sites', {groups, mean: 20, theta: 8}],
    ['three sites beside six', {groups: threeAndSix, mean: 90, theta: 3}],
    ['few animals', {groups: [...groups, 'a', 'b'], mean: 4, theta: 2}]
  ])(
    'of %s is found by the test of reports in about four seasons of five',
    (name, {groups: laid, mean: own, theta: clumps}) => {
      const expected = laid.map(() => own)
      const ratio = numberOf(
        smallestDetectableRatio({expected, groups: laid, raised: 'b', theta: clumps}, options())
      )
      const random = randomStream(2, `seasons/${name}`)
      let found = 0
      for (let season = 0; season < 150; season += 1) {
        const counts = laid.map((group) => {
          return countQuantile(random.uniform(), (group === 'b' ? ratio : 1) * own, clumps)
        })
        const {p} = likelihoodRatioPermutation(
          {counts, efforts: expected, groups: laid},
          {limit: 999, random}
        )
        if (isDefined(p) && p.value <= 0.05) found += 1
      }
      // Three standard errors of both simulations.
      expect(Math.abs(found / 150 - 0.8)).toBeLessThan(3 * Math.sqrt(0.16 / 150 + 0.16 / 200))
    }
  )

  test('falls with the number of sites and with less clumping', () => {
    const ratio = numberOf(smallestDetectableRatio(layout, options()))
    const doubled = {
      ...layout,
      expected: [...layout.expected, ...layout.expected],
      groups: [...groups, ...groups]
    }
    expect(numberOf(smallestDetectableRatio(doubled, options()))).toBeLessThan(ratio)
    expect(
      numberOf(smallestDetectableRatio({...layout, theta: Number.POSITIVE_INFINITY}, options()))
    ).toBeLessThan(ratio)
  })

  test('is the same for the same seed', () => {
    expect(smallestDetectableRatio(layout, options())).toEqual(smallestDetectableRatio(layout, options()))
  })

  test('does not exist where the layout cannot reach the level, nor for one habitat, nor without catch', () => {
    const small = {...layout, expected: [9, 9, 9, 9, 9, 9], groups: ['a', 'a', 'a', 'b', 'b', 'b']}
    expect(smallestDetectableRatio(small, options())).toEqual({
      notDefined: 'the smallest p that this layout allows is above the level'
    })
    expect(smallestDetectableRatio({...layout, groups: groups.map(() => 'b')}, options())).toHaveProperty(
      'notDefined'
    )
    expect(smallestDetectableRatio({...layout, expected: groups.map(() => 0)}, options())).toEqual({
      notDefined: 'no catch is expected'
    })
    expect(smallestDetectableRatio({...layout, theta: 0.02}, options())).toEqual({
      notDefined: 'even 100 times the rate would not show'
    })
  })
})

describe('effort for precision', () => {
  const goal = {rate: 0.4, theta: 6, units: 6, effort: 500, relativeHalfWidth: 0.5}

  test('gives the effort at which the half-width is the one asked for', () => {
    const {totalEffort} = effortForPrecision({...goal, relativeHalfWidth: 0.6})
    const again = effortForPrecision({...goal, effort: numberOf(totalEffort), relativeHalfWidth: 0.6})
    expect(numberOf(again.present)).toBeCloseTo(0.6, 10)
  })

  test('gives the first number of sites whose half-width is not above the one asked for', () => {
    const units = numberOf(effortForPrecision(goal).units)
    const width = (sites: number) =>
      numberOf(effortForPrecision({...goal, units: sites, effort: (500 / 6) * sites}).present)
    expect(width(units)).toBeLessThanOrEqual(0.5)
    expect(width(units - 1)).toBeGreaterThan(0.5)
  })

  test('has the half-width of the interval R exp(+-t s)', () => {
    const s = Math.sqrt(1 / (0.4 * 500) + 1 / (6 * 6))
    const t = studentQuantile(0.975, 5)
    const half = (Math.exp(t * s) - Math.exp(-t * s)) / 2
    expect(numberOf(effortForPrecision(goal).present)).toBeCloseTo(half, 12)
  })

  test('says that effort alone will not do where sites differ too much', () => {
    const {totalEffort, units} = effortForPrecision({...goal, theta: 0.5})
    expect(totalEffort).toEqual({
      notDefined: 'the units differ too much for effort alone: more units are needed'
    })
    expect(numberOf(units)).toBeGreaterThan(6)
  })

  test('has no range for one site, and nothing without catch or effort', () => {
    const one = effortForPrecision({...goal, units: 1})
    expect(one.present).toEqual({notDefined: 'there is only one unit'})
    expect(isDefined(one.units)).toBe(true)
    expect(effortForPrecision({...goal, rate: 0}).units).toEqual({notDefined: 'nothing was caught'})
    expect(effortForPrecision({...goal, effort: 0}).units).toEqual({notDefined: 'there was no effort'})
    expect(() => effortForPrecision({...goal, relativeHalfWidth: 0})).toThrow(RangeError)
  })
})
