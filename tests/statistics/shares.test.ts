import fc from 'fast-check'
import {expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {clopperPearsonInterval} from '../../src/statistics/clopper-pearson-interval.ts'
import {countingErrorMethod} from '../../src/statistics/ratio-rate.ts'
import {ratioShare, type ShareUnit, shareBetweenUnitsMethod} from '../../src/statistics/ratio-share.ts'
import {betaCdf, studentQuantile} from '../../src/statistics/special-functions.ts'

const unit: fc.Arbitrary<ShareUnit> = fc
  .tuple(fc.integer({min: 0, max: 400}), fc.integer({min: 0, max: 400}))
  .map(([part, others]) => ({part, whole: part + others}))

function intervalOf(units: readonly ShareUnit[]) {
  const share = ratioShare(units)
  if (!isDefined(share) || !share.interval) throw new Error('a share with an interval was expected')
  return {...share, interval: share.interval}
}

test('the range between units follows its formula by hand', () => {
  // 48 of 120, p 0.4; deviations 10 - 16, 20 - 16, 18 - 16; s^2 = (3/2) 56/120^2.
  const {value, standardError, interval} = intervalOf([10, 20, 18].map((part) => ({part, whole: 40})))
  const s = Math.sqrt((1.5 * 56) / 120 ** 2)
  expect(value).toBeCloseTo(0.4, 15)
  expect(standardError).toBeCloseTo(s, 12)
  const reach = (studentQuantile(0.975, 2) * s) / 0.24
  expect(Math.log(interval.low / (1 - interval.low))).toBeCloseTo(Math.log(0.4 / 0.6) - reach, 9)
  expect(Math.log(interval.high / (1 - interval.high))).toBeCloseTo(Math.log(0.4 / 0.6) + reach, 9)
  expect(interval.method).toBe(shareBetweenUnitsMethod)
})

test('units that are alike by chance have at least the range of animals drawn singly', () => {
  const {standardError} = intervalOf([
    {part: 1, whole: 2},
    {part: 2, whole: 4}
  ])
  expect(standardError).toBeCloseTo(Math.sqrt(0.25 / 6), 12)
})

test('one unit, none and all have counting error only, and say so', () => {
  for (const units of [
    [{part: 3, whole: 10}],
    [
      {part: 0, whole: 7},
      {part: 0, whole: 3}
    ],
    [
      {part: 7, whole: 7},
      {part: 3, whole: 3}
    ]
  ]) {
    const {interval} = intervalOf(units)
    const part = units.reduce((sum, each) => sum + each.part, 0)
    expect(interval).toEqual({...clopperPearsonInterval(part, 10), method: countingErrorMethod})
  }
})

test('a unit without animals changes nothing, and no animals have no share', () => {
  const units = [
    {part: 4, whole: 9},
    {part: 2, whole: 12}
  ]
  expect(ratioShare([...units, {part: 0, whole: 0}])).toEqual(ratioShare(units))
  expect(ratioShare([{part: 0, whole: 0}])).toEqual({notDefined: 'no animals were caught'})
})

test('impossible shares are refused', () => {
  expect(() => ratioShare([{part: 3, whole: 2}])).toThrow(RangeError)
  expect(() => ratioShare([{part: 0.5, whole: 2}])).toThrow(RangeError)
  expect(() => clopperPearsonInterval(0, 0)).toThrow(RangeError)
  expect(() => clopperPearsonInterval(5, 4)).toThrow(RangeError)
})

test('a share lies in its interval within 0 and 1, and that of the others mirrors it', () => {
  fc.assert(
    fc.property(fc.array(unit, {minLength: 1, maxLength: 8}), (units) => {
      fc.pre(units.some(({whole}) => whole > 0))
      const own = intervalOf(units)
      const others = intervalOf(units.map(({part, whole}) => ({part: whole - part, whole})))
      expect(own.interval.low).toBeGreaterThanOrEqual(0)
      expect(own.interval.high).toBeLessThanOrEqual(1)
      expect(own.interval.low).toBeLessThanOrEqual(own.value)
      expect(own.interval.high).toBeGreaterThanOrEqual(own.value)
      expect(others.interval.low).toBeCloseTo(1 - own.interval.high, 9)
      expect(others.interval.high).toBeCloseTo(1 - own.interval.low, 9)
    })
  )
})

test('at the limits of the exact interval the tails of the binomial distribution are those asked for', () => {
  fc.assert(
    fc.property(fc.integer({min: 1, max: 5000}), fc.nat(5000), (whole, some) => {
      const part = some % (whole + 1)
      const {low, high} = clopperPearsonInterval(part, whole)
      // P(X >= x) at p is the beta distribution of x and n - x + 1 up to p.
      if (part > 0) expect(betaCdf(low, part, whole - part + 1)).toBeCloseTo(0.025, 8)
      if (part < whole) expect(betaCdf(high, part + 1, whole - part)).toBeCloseTo(0.975, 8)
    })
  )
})
