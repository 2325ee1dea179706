import fc from 'fast-check'
import {expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {garwoodInterval} from '../../src/statistics/garwood-interval.ts'
import {
  betweenUnitsMethod,
  countingErrorMethod,
  type RateUnit,
  ratioRate
} from '../../src/statistics/ratio-rate.ts'
import {chiSquareUpperTail, studentQuantile} from '../../src/statistics/special-functions.ts'

const unit: fc.Arbitrary<RateUnit> = fc.record({
  count: fc.integer({min: 0, max: 5000}),
  effort: fc.double({min: 0.5, max: 500, noNaN: true})
})

function intervalOf(units: readonly RateUnit[], per = 1) {
  const rate = ratioRate(units, {per})
  if (!isDefined(rate) || !rate.interval) throw new Error('a rate with an interval was expected')
  return {...rate, interval: rate.interval}
}

test('the range between units follows its formula by hand', () => {
  // Sum c 60 over sum e 30, R 2; deviations 10 - 20, 20 - 20, 30 - 20; s^2 = (3/2) 200/3600.
  const {value, standardError, interval} = intervalOf([10, 20, 30].map((count) => ({count, effort: 10})))
  const s = Math.sqrt((1.5 * 200) / 3600)
  expect(value).toBe(2)
  expect(standardError).toBeCloseTo(2 * s, 12)
  expect(interval.low).toBeCloseTo(2 * Math.exp(-studentQuantile(0.975, 2) * s), 12)
  expect(interval.high).toBeCloseTo(2 * Math.exp(studentQuantile(0.975, 2) * s), 12)
  expect(interval).toMatchObject({confidence: 0.95, method: betweenUnitsMethod})
})

test('one unit has counting error only, and says so', () => {
  const {interval} = intervalOf([{count: 10, effort: 20}])
  expect(interval.method).toBe(countingErrorMethod)
  expect(countingErrorMethod).toBe('counting error only, not a range for the habitat')
  expect(interval.low).toBeCloseTo(garwoodInterval(10).low / 20, 12)
  expect(interval.high).toBeCloseTo(garwoodInterval(10).high / 20, 12)
})

test('several units without any catch have counting error on their whole effort', () => {
  const {value, interval} = intervalOf([
    {count: 0, effort: 30},
    {count: 0, effort: 70}
  ])
  expect(value).toBe(0)
  expect(interval).toMatchObject({low: 0, method: countingErrorMethod})
  // The upper 97.5 % limit of no event is -ln 0.025.
  expect(interval.high).toBeCloseTo(-Math.log(0.025) / 100, 10)
})

test('a unit without effort changes nothing', () => {
  const units = [
    {count: 4, effort: 14},
    {count: 9, effort: 12}
  ]
  expect(ratioRate([...units, {count: 0, effort: 0}])).toEqual(ratioRate(units))
})

test('units that caught exactly alike carry a caution with their range of no width', () => {
  const {interval, caution} = intervalOf([
    {count: 3, effort: 14},
    {count: 6, effort: 28}
  ])
  expect(interval.high).toBeCloseTo(interval.low, 12)
  expect(caution).toMatch(/no width/)
})

test('counts raised to whole samples have a range between units but no counting error', () => {
  expect(
    isDefined(
      ratioRate([
        {count: 2.5, effort: 10},
        {count: 4, effort: 10}
      ])
    )
  ).toBe(true)
  expect(() => ratioRate([{count: 2.5, effort: 10}])).toThrow(RangeError)
})

test('impossible units are refused', () => {
  expect(() => ratioRate([{count: -1, effort: 10}])).toThrow(RangeError)
  expect(() => ratioRate([{count: 1, effort: -10}])).toThrow(RangeError)
  expect(() => ratioRate([{count: 1, effort: 0}])).toThrow(RangeError)
  expect(() => ratioRate([{count: Number.NaN, effort: 1}])).toThrow(RangeError)
})

test('a rate lies in its interval, and both grow with the effort they are given for', () => {
  fc.assert(
    fc.property(fc.array(unit, {minLength: 1, maxLength: 8}), (units) => {
      const one = intervalOf(units)
      const hundred = intervalOf(units, 100)
      expect(one.interval.low).toBeLessThanOrEqual(one.value)
      expect(one.interval.high).toBeGreaterThanOrEqual(one.value)
      expect(hundred.value).toBeCloseTo(100 * one.value, 6)
      expect(hundred.interval.low).toBeCloseTo(100 * one.interval.low, 6)
    })
  )
})

test('the order of units does not matter to a rate', () => {
  fc.assert(
    fc.property(fc.array(unit, {minLength: 2, maxLength: 8}), (units) => {
      const forward = intervalOf(units)
      const backward = intervalOf([...units].reverse())
      expect(backward.value / forward.value || 1).toBeCloseTo(1, 12)
      expect(backward.interval.low / forward.interval.low || 1).toBeCloseTo(1, 9)
    })
  )
})

test('at the limits of the exact interval the tails of the Poisson distribution are those asked for', () => {
  fc.assert(
    fc.property(
      fc.integer({min: 0, max: 20_000}),
      fc.constantFrom(0.8, 0.9, 0.95, 0.99),
      (events, confidence) => {
        const {low, high} = garwoodInterval(events, confidence)
        // P(Y <= y) at mean m is the upper tail of chi-square with 2 y + 2 degrees of freedom at 2 m.
        expect(chiSquareUpperTail(2 * high, 2 * events + 2)).toBeCloseTo((1 - confidence) / 2, 8)
        if (events === 0) expect(low).toBe(0)
        else expect(1 - chiSquareUpperTail(2 * low, 2 * events)).toBeCloseTo((1 - confidence) / 2, 8)
      }
    )
  )
})
