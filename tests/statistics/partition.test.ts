import fc from 'fast-check'
import {expect, test} from 'vitest'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {hillNumber} from '../../src/statistics/hill-observed.ts'
import {partition} from '../../src/statistics/partition.ts'
import {numberOf} from './number-of.ts'

const communities = fc
  .tuple(fc.integer({min: 1, max: 5}), fc.integer({min: 1, max: 8}))
  .chain(([rows, species]) =>
    fc.array(fc.array(fc.nat({max: 30}), {minLength: species, maxLength: species}), {
      minLength: rows,
      maxLength: rows
    })
  )
  .filter((rows) => rows.every((row) => row.some((count) => count > 0)))
const orders = fc.constantFrom(0, 1, 2)

test('beta lies between 1 and the number of communities, and gamma is alpha times beta', () => {
  fc.assert(
    fc.property(communities, orders, (rows, order) => {
      const {alpha, beta, gamma} = partition(rows, order)
      expect(numberOf(beta)).toBeGreaterThan(1 - 1e-12)
      expect(numberOf(beta)).toBeLessThan(rows.length + 1e-9)
      expect(numberOf(alpha) * numberOf(beta)).toBeCloseTo(numberOf(gamma), 9)
    }),
    {seed: 2}
  )
})

test('communities that are alike have beta 1, and alpha and gamma of any one of them', () => {
  fc.assert(
    fc.property(communities, orders, ([row], order) => {
      const {alpha, beta, gamma} = partition([row!, row!, row!], order)
      const own = hillNumber(frequencyCounts(row!), order)
      expect(numberOf(beta)).toBeCloseTo(1, 9)
      expect(numberOf(alpha)).toBeCloseTo(own, 9)
      expect(numberOf(gamma)).toBeCloseTo(own, 9)
    }),
    {seed: 2}
  )
})

test('communities of equal diversity that share nothing have beta equal to their number', () => {
  fc.assert(
    fc.property(communities, orders, ([row], order) => {
      const nothing = row!.map(() => 0)
      const apart = [
        [...row!, ...nothing, ...nothing],
        [...nothing, ...row!, ...nothing],
        [...nothing, ...nothing, ...row!]
      ]
      expect(numberOf(partition(apart, order).beta)).toBeCloseTo(3, 9)
    }),
    {seed: 2}
  )
})

test('communities weigh the same, whatever their numbers of individuals', () => {
  const {gamma} = partition(
    [
      [1000, 0],
      [0, 10]
    ],
    1
  )
  expect(numberOf(gamma)).toBeCloseTo(2, 12)
})

test('alpha of order 0 is the mean number of species, and its beta carries a caution', () => {
  const {alpha, beta} = partition(
    [
      [3, 2, 1, 0],
      [0, 0, 5, 0]
    ],
    0
  )
  expect(alpha).toEqual({value: 2})
  expect(beta).toEqual({value: 1.5, caution: 'under-sampling inflates beta of order 0'})
})

test('nothing is defined without communities or with an empty one', () => {
  const none = {notDefined: 'there are no communities'}
  expect(partition([], 1)).toEqual({alpha: none, beta: none, gamma: none})
  const empty = {notDefined: 'one of the communities is empty'}
  expect(partition([[1], [0]], 1)).toEqual({alpha: empty, beta: empty, gamma: empty})
  expect(() => partition([[1], [1, 2]], 1)).toThrow(RangeError)
})
