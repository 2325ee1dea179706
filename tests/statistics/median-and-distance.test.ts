import fc from 'fast-check'
import {expect, test} from 'vitest'
import {greatCircleDistance} from '../../src/statistics/great-circle-distance.ts'
import {median} from '../../src/statistics/median.ts'
import {numberOf} from './number-of.ts'

const position = fc.record({
  latitude: fc.double({min: -90, max: 90, noNaN: true}),
  longitude: fc.double({min: -180, max: 180, noNaN: true})
})

test('a median leaves at most half of the values on either side, whatever their order', () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), {minLength: 1, maxLength: 30}), (values) => {
      const middle = numberOf(median(values))
      expect(values.filter((value) => value < middle).length).toBeLessThanOrEqual(values.length / 2)
      expect(values.filter((value) => value > middle).length).toBeLessThanOrEqual(values.length / 2)
      expect(numberOf(median([...values].reverse()))).toBe(middle)
    })
  )
})

test('a median leaves the list that it was given in its order', () => {
  const values = [3, 1, 2]
  median(values)
  expect(values).toEqual([3, 1, 2])
})

test('distance is the same in both directions, and never more than half round the globe', () => {
  fc.assert(
    fc.property(position, position, (here, there) => {
      const distance = greatCircleDistance(here, there)
      expect(distance).toBeGreaterThanOrEqual(0)
      expect(distance).toBeLessThanOrEqual(20_015_115)
      expect(greatCircleDistance(there, here)).toBeCloseTo(distance, 3)
    })
  )
})

test('opposite points are half a circumference apart and traps a metre apart are a metre apart', () => {
  const antipodes = greatCircleDistance({latitude: 12, longitude: 34}, {latitude: -12, longitude: -146})
  expect(antipodes).toBeCloseTo(Math.PI * 6_371_008.7714, 3)
  // One metre of latitude is 360/40 030 230 degrees on this sphere.
  const step = 360 / (2 * Math.PI * 6_371_008.7714)
  const metre = greatCircleDistance({latitude: 52, longitude: 1}, {latitude: 52 + step, longitude: 1})
  expect(metre).toBeCloseTo(1, 6)
})
