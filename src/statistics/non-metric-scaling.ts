import type {Quantity} from '../model/quantity.ts'
import {fixedSign} from './fixed-sign.ts'
import {monotoneRegression} from './monotone-regression.ts'
import {principalAxes} from './principal-axes.ts'
import {principalCoordinates} from './principal-coordinates.ts'
import type {RandomStream} from './random-stream.ts'

export interface NonMetricScalingOptions {
  readonly random: RandomStream
  readonly dimensions?: number
  /** Random starts, besides the one from principal coordinates. */
  readonly starts?: number
}

export interface NonMetricScaling {
  /** Kruskal's stress-1 of the best solution. */
  readonly stress: Quantity
  /** One row per sample; centred, turned to principal axes, root mean square distance between samples 1. */
  readonly coordinates: readonly (readonly number[])[]
  readonly starts: number
  /** Starts that came within 0.001 of the best stress: one alone is a reason for more starts. */
  readonly startsAtBest: number
}

/** One row of coordinates per sample. */
type Points = readonly (readonly number[])[]

interface Solution {
  readonly coordinates: Points
  readonly stress: number
}

const iterationLimit = 2000

/** Where every start stops, and where the best of them stops in the end. */
const roughGain = 1e-6
const fineGain = 1e-9

/**
 * Non-metric multidimensional scaling: samples as points whose distances keep the order of the
 * dissimilarities.
 *
 * Formula: minimise stress-1 = sqrt(sum (d - d^)^2 / sum d^2), d^ the monotone regression of the distances d
 * on the dissimilarities, ties of which may be broken (Kruskal's primary approach). By majorization: each
 * point moves to sum_j (d^_ij/d_ij)(x_i - x_j)/n until stress falls by less than 1e-6 in a step, the best
 * start by less than 1e-9. One start from principal coordinates, the others random; of stresses within 1e-4
 * the first.
 *
 * Source: Kruskal 1964, Psychometrika 29:1-27 and 29:115-129; majorization, de Leeuw 1977 in Recent
 * Developments in Statistics, 133-145 (from memory).
 *
 * Edge cases: fewer than three samples, or samples all alike: not defined. With fewer than 4 samples per
 * dimension and one more a low stress is nearly certain whatever the data (Kruskal & Wish 1978,
 * Multidimensional Scaling, from memory): a caution says so.
 *
 * @example nonMetricScaling([[0, 1], [1, 0]], {}).stress // => {notDefined: 'there are fewer than three samples'}
 * @example nonMetricScaling([[0, 1, 3], [1, 0, 2], [3, 2, 0]], {starts: 0}).stress.value.toFixed(6) // => '0.000000'
 */
export function nonMetricScaling(
  dissimilarities: readonly (readonly number[])[],
  {random, dimensions = 2, starts = 20}: NonMetricScalingOptions
): NonMetricScaling {
  const none = (notDefined: string): NonMetricScaling => ({
    stress: {notDefined},
    coordinates: [],
    starts: 0,
    startsAtBest: 0
  })
  if (dissimilarities.length < 3) return none('there are fewer than three samples')
  const classical = principalCoordinates(dissimilarities)
  if ('notDefined' in classical) return none(classical.notDefined)
  const first = classical.coordinates.map((row) =>
    Array.from({length: dimensions}, (_, axis) => row[axis] ?? 0)
  )
  const pairs = rankedPairs(dissimilarities)
  const solutions = [descend(first, pairs, roughGain)]
  for (let start = 0; start < starts; start += 1) {
    const scattered = first.map((row) => row.map(() => 2 * random.uniform() - 1))
    solutions.push(descend(scattered, pairs, roughGain))
  }
  const lowest = solutions.reduce((low, next) => (next.stress < low.stress - 1e-4 ? next : low))
  const best = descend(lowest.coordinates, pairs, fineGain)
  const crowded = dissimilarities.length < 4 * dimensions + 1
  return {
    stress: {
      value: best.stress,
      ...(crowded && {caution: 'so few samples fit almost any order: a low stress says little here'})
    },
    coordinates: turnedToAxes(best.coordinates),
    starts: solutions.length,
    startsAtBest: solutions.filter(({stress}) => stress <= lowest.stress + 0.001).length
  }
}

interface RankedPairs {
  /** First and second sample of each pair, by rising dissimilarity. */
  readonly firsts: readonly number[]
  readonly seconds: readonly number[]
  /** Start and end of each run of equal dissimilarities, where there is more than one pair. */
  readonly ties: readonly (readonly [number, number])[]
}

function rankedPairs(dissimilarities: readonly (readonly number[])[]): RankedPairs {
  const pairs = dissimilarities
    .flatMap((row, i) => row.slice(i + 1).map((value, offset) => ({i, j: i + 1 + offset, value})))
    .sort((a, b) => a.value - b.value || a.i - b.i || a.j - b.j)
  const ties: (readonly [number, number])[] = []
  for (let start = 0; start < pairs.length; ) {
    let end = start + 1
    while (end < pairs.length && pairs[end]!.value - pairs[start]!.value <= 1e-12) end += 1
    if (end - start > 1) ties.push([start, end])
    start = end
  }
  return {firsts: pairs.map(({i}) => i), seconds: pairs.map(({j}) => j), ties}
}

/** Steps of majorization until stress gains less than `leastGain`. */
function descend(start: Points, pairs: RankedPairs, leastGain: number): Solution {
  const dimensions = start[0]!.length
  let here = assessed(Float64Array.from(start.flat()), dimensions, pairs)
  // Two states take turns, because a study comes here some thousands of times.
  let spare = assessed(here.coordinates.slice(), dimensions, pairs)
  for (let iteration = 0; iteration < iterationLimit; iteration += 1) {
    const next = spare
    move(here, next.coordinates, dimensions, pairs)
    assess(next, dimensions, pairs)
    const gain = here.stress - next.stress
    if (gain > 0) [here, spare] = [next, here]
    if (gain < leastGain) break
  }
  const {coordinates, stress} = here
  return {
    coordinates: start.map((row, sample) => row.map((_, axis) => coordinates[sample * dimensions + axis]!)),
    stress
  }
}

interface State {
  /** Sample after sample. */
  readonly coordinates: Float64Array
  /** Of each pair, in the order of the pairs. */
  readonly distances: Float64Array
  readonly disparities: Float64Array
  stress: number
}

function assessed(coordinates: Float64Array, dimensions: number, pairs: RankedPairs): State {
  const {length} = pairs.firsts
  const state = {
    coordinates,
    distances: new Float64Array(length),
    disparities: new Float64Array(length),
    stress: 1
  }
  assess(state, dimensions, pairs)
  return state
}

/** Distances, disparities and stress of a state, from its coordinates. */
function assess(state: State, dimensions: number, {firsts, seconds, ties}: RankedPairs): void {
  const {coordinates, distances, disparities} = state
  for (let pair = 0; pair < distances.length; pair += 1) {
    const first = firsts[pair]! * dimensions
    const second = seconds[pair]! * dimensions
    let squares = 0
    for (let axis = 0; axis < dimensions; axis += 1) {
      squares += (coordinates[first + axis]! - coordinates[second + axis]!) ** 2
    }
    distances[pair] = Math.sqrt(squares)
  }
  disparities.set(distances)
  // Pairs of equal dissimilarity may take any order among themselves: that of their distances costs least.
  const orders = ties.map(([from, to]) => {
    const order = Array.from({length: to - from}, (_, index) => from + index)
    order.sort((a, b) => distances[a]! - distances[b]!)
    for (const [index, pair] of order.entries()) disparities[from + index] = distances[pair]!
    return order
  })
  const fitted = monotoneRegression(disparities)
  disparities.set(fitted)
  for (const [run, order] of orders.entries()) {
    for (const [index, pair] of order.entries()) disparities[pair] = fitted[ties[run]![0] + index]!
  }
  let misfit = 0
  let total = 0
  for (let pair = 0; pair < distances.length; pair += 1) {
    misfit += (distances[pair]! - disparities[pair]!) ** 2
    total += distances[pair]! ** 2
  }
  state.stress = total === 0 ? 1 : Math.sqrt(misfit / total)
}

/** Coordinates after one step from a state. */
function move(
  {coordinates, distances, disparities}: State,
  moved: Float64Array,
  dimensions: number,
  {firsts, seconds}: RankedPairs
): void {
  moved.fill(0)
  const samples = coordinates.length / dimensions
  for (let pair = 0; pair < distances.length; pair += 1) {
    if (distances[pair] === 0) continue
    const pull = disparities[pair]! / distances[pair]! / samples
    const first = firsts[pair]! * dimensions
    const second = seconds[pair]! * dimensions
    for (let axis = 0; axis < dimensions; axis += 1) {
      const step = pull * (coordinates[first + axis]! - coordinates[second + axis]!)
      moved[first + axis]! += step
      moved[second + axis]! -= step
    }
  }
}

function turnedToAxes(points: Points): Points {
  const axes = points[0]!.map((_, axis) => axis)
  const means = axes.map((axis) => points.reduce((sum, row) => sum + row[axis]!, 0) / points.length)
  const centred = points.map((row) => row.map((value, axis) => value - means[axis]!))
  const products = axes.map((a) => axes.map((b) => centred.reduce((sum, row) => sum + row[a]! * row[b]!, 0)))
  const {eigenvectors} = principalAxes(products)
  const turned = centred.map((row) =>
    eigenvectors.map((vector) => row.reduce((sum, value, axis) => sum + value * vector[axis]!, 0))
  )
  // Squares about the centre times n are the squared distances of all pairs.
  const squares = turned.reduce((sum, row) => sum + row.reduce((part, value) => part + value ** 2, 0), 0)
  const scale = Math.sqrt((points.length - 1) / 2 / squares)
  const columns = axes.map((axis) => fixedSign(turned.map((row) => row[axis]! * scale)))
  return points.map((_, sample) => columns.map((column) => column[sample]!))
}
