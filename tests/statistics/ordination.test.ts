import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {gowerCentred} from '../../src/statistics/gower-centred.ts'
import {monotoneRegression} from '../../src/statistics/monotone-regression.ts'
import {nonMetricScaling} from '../../src/statistics/non-metric-scaling.ts'
import {type PrincipalCoordinates, principalCoordinates} from '../../src/statistics/principal-coordinates.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {numberOf} from './number-of.ts'

const coordinate = fc.integer({min: -50, max: 50})
const points = (count: number) =>
  fc.array(fc.tuple(coordinate, coordinate), {minLength: count, maxLength: count})

function distancesOf(places: readonly (readonly number[])[]): number[][] {
  return places.map((a) => places.map((b) => Math.hypot(...a.map((value, axis) => value - b[axis]!))))
}

function defined(result: PrincipalCoordinates) {
  if ('notDefined' in result) throw new Error(result.notDefined)
  return result
}

describe('principal coordinates', () => {
  test('give back the distances of points in a plane, on two axes', () => {
    fc.assert(
      fc.property(points(6), (places) => {
        const distances = distancesOf(places)
        fc.pre(distances.flat().some((distance) => distance > 0))
        const {coordinates, imaginary} = defined(principalCoordinates(distances))
        expect(coordinates[0]!.length).toBeLessThanOrEqual(2)
        expect(imaginary).toBe(0)
        for (const [i, row] of distancesOf(coordinates).entries()) {
          for (const [j, distance] of row.entries()) expect(distance).toBeCloseTo(distances[i]![j]!, 4)
        }
      }),
      {numRuns: 60}
    )
  })

  test('have shares that add up to 1 and eigenvalues in descending order', () => {
    fc.assert(
      fc.property(points(6), (places) => {
        const distances = distancesOf(places).map((row) => row.map(Math.sqrt))
        fc.pre(distances.flat().some((distance) => distance > 0))
        const {shares, eigenvalues} = defined(principalCoordinates(distances))
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10)
        expect([...eigenvalues].sort((a, b) => b - a)).toEqual(eigenvalues)
      }),
      {numRuns: 60}
    )
  })

  test('point the coordinate of largest size upwards on every axis', () => {
    const {coordinates} = defined(
      principalCoordinates(
        distancesOf([
          [0, 0],
          [1, 3],
          [7, 2],
          [4, 9],
          [30, 4]
        ])
      )
    )
    for (const axis of [0, 1]) {
      const column = coordinates.map((row) => row[axis]!)
      expect(Math.max(...column)).toBe(Math.max(...column.map(Math.abs)))
    }
  })

  test('do not change with the order of samples', () => {
    const places = [
      [0, 0],
      [1, 3],
      [7, 2],
      [4, 9],
      [30, 4]
    ]
    const forward = defined(principalCoordinates(distancesOf(places))).coordinates
    const backward = defined(principalCoordinates(distancesOf([...places].reverse()))).coordinates
    for (const [index, row] of [...backward].reverse().entries()) {
      for (const [axis, value] of row.entries()) expect(value).toBeCloseTo(forward[index]![axis]!, 8)
    }
  })

  test('report what no axis can show where dissimilarities fit no space', () => {
    // Three points a unit apart from one another and a fourth 0.5 from each: nearer than the middle is (0.577).
    const matrix = [
      [0, 1, 1, 0.5],
      [1, 0, 1, 0.5],
      [1, 1, 0, 0.5],
      [0.5, 0.5, 0.5, 0]
    ]
    const {eigenvalues, imaginary} = defined(principalCoordinates(matrix))
    expect(eigenvalues.at(-1)).toBeLessThan(0)
    const trace = gowerCentred(matrix).reduce((sum, row, index) => sum + row[index]!, 0)
    expect(eigenvalues.reduce((sum, value) => sum + value, 0)).toBeCloseTo(trace, 10)
    expect(imaginary).toBeCloseTo(-eigenvalues.at(-1)! / (eigenvalues[0]! + eigenvalues[1]!), 10)
  })
})

test('a monotone regression rises, keeps the sum, and is at least as near as a flat line', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({min: 0, max: 100}), {minLength: 1, maxLength: 30}), (values) => {
      const fit = monotoneRegression(values)
      const sum = (list: readonly number[]) => list.reduce((total, value) => total + value, 0)
      for (const [index, value] of fit.slice(1).entries()) expect(value).toBeGreaterThanOrEqual(fit[index]!)
      expect(sum(fit)).toBeCloseTo(sum(values), 8)
      const misfit = (line: readonly number[]) =>
        sum(line.map((value, index) => (value - values[index]!) ** 2))
      const flat = values.map(() => sum(values) / values.length)
      expect(misfit(fit)).toBeLessThanOrEqual(misfit(flat) + 1e-9)
      for (const [index, value] of monotoneRegression(fit).entries())
        expect(value).toBeCloseTo(fit[index]!, 10)
    })
  )
})

describe('non-metric scaling', () => {
  const places = [
    [0, 0],
    [1, 3],
    [7, 2],
    [4, 9],
    [12, 4],
    [9, 11],
    [2, 13],
    [15, 15],
    [5, 5],
    [14, 0]
  ]
  const stream = () => randomStream(1, 'scaling')

  test('of points in a plane has no stress, however their distances are stretched', () => {
    const stretched = distancesOf(places).map((row) => row.map((distance) => distance ** 1.7))
    const {stress, starts, startsAtBest} = nonMetricScaling(stretched, {random: stream()})
    expect(numberOf(stress)).toBeLessThan(0.005)
    expect(starts).toBe(21)
    expect(startsAtBest).toBeGreaterThan(1)
  })

  test('cares for the order of dissimilarities alone', () => {
    const distances = distancesOf(
      [...places, [40, 3], [3, 28]].map(([x, y], index) => [x!, y!, (index * 7) % 12])
    )
    const one = nonMetricScaling(distances, {random: stream(), starts: 30})
    const other = nonMetricScaling(
      distances.map((row) => row.map((distance) => Math.log1p(distance))),
      {random: stream(), starts: 30}
    )
    expect(numberOf(other.stress)).toBeCloseTo(numberOf(one.stress), 2)
  })

  test('gives the same bytes twice', () => {
    const distances = distancesOf(places.map(([x, y], index) => [x!, y!, (index * 5) % 7]))
    const twice = [0, 1].map(() => JSON.stringify(nonMetricScaling(distances, {random: stream()})))
    expect(twice[0]).toBe(twice[1])
  })

  test('gives the stress of its own coordinates by the definition of Kruskal', () => {
    const distances = distancesOf(places.map(([x, y], index) => [x!, y!, (index * 5) % 7]))
    const {stress, coordinates} = nonMetricScaling(distances, {random: stream()})
    const drawn = distancesOf(coordinates)
    const pairs = distances
      .flatMap((row, i) =>
        row.slice(i + 1).map((value, offset) => [value, drawn[i]![i + 1 + offset]!] as const)
      )
      .sort((a, b) => a[0] - b[0] || a[1] - b[1])
    const lengths = pairs.map(([, length]) => length)
    const fit = monotoneRegression(lengths)
    const misfit = lengths.reduce((sum, length, index) => sum + (length - fit[index]!) ** 2, 0)
    const squares = lengths.reduce((sum, length) => sum + length ** 2, 0)
    expect(numberOf(stress)).toBeCloseTo(Math.sqrt(misfit / squares), 8)
    // Root mean square distance 1.
    expect(squares / lengths.length).toBeCloseTo(1, 8)
  })

  test('cautions where samples are few', () => {
    const few = nonMetricScaling(distancesOf(places.slice(0, 5)), {random: stream()})
    expect(few.stress).toHaveProperty('caution')
    expect(nonMetricScaling(distancesOf(places), {random: stream()}).stress).not.toHaveProperty('caution')
  })

  test('is not defined for two samples, or for samples all alike', () => {
    expect(
      nonMetricScaling(
        [
          [0, 1],
          [1, 0]
        ],
        {random: stream()}
      ).stress
    ).toHaveProperty('notDefined')
    expect(nonMetricScaling(distancesOf([[1], [1], [1]]), {random: stream()}).stress).toHaveProperty(
      'notDefined'
    )
  })

  test('stands ties and samples that are alike', () => {
    const {stress, coordinates} = nonMetricScaling(distancesOf([[0], [0], [1], [1], [0]]), {random: stream()})
    expect(numberOf(stress)).toBeCloseTo(0, 6)
    expect(coordinates.flat().every(Number.isFinite)).toBe(true)
  })
})
