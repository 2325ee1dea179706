import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {permutationTest} from '../../src/statistics/permutation-test.ts'
import {permutations} from '../../src/statistics/permutations.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'

const random = randomStream(1, 'permutations')

const layout = fc.array(
  fc.record({label: fc.integer({min: 0, max: 2}), block: fc.integer({min: 0, max: 1})}),
  {
    minLength: 1,
    maxLength: 8
  }
)

/** The partition of an arrangement, whatever its groups are called. */
function partition(arrangement: readonly number[]): string {
  const order = [...new Set(arrangement)]
  return arrangement.map((group) => order.indexOf(group)).join('')
}

describe('all arrangements', () => {
  test('of two habitats with three sites each are ten, so that p cannot go below 0.10', () => {
    const plan = permutations(['a', 'a', 'a', 'b', 'b', 'b'], {limit: 9999, random})
    expect(plan).toMatchObject({distinct: 10, exhaustive: true, tried: 10, smallestP: 0.1})
  })

  // Distinct splits of two groups of k: choose(2 k, k)/2.
  test.each([
    [3, 10],
    [4, 35],
    [5, 126],
    [6, 462]
  ])('of two habitats with %i sites each are %i', (size, distinct) => {
    const labels = Array.from({length: 2 * size}, (_, unit) => unit % 2)
    expect(permutations(labels, {limit: 9999, random}).distinct).toBe(distinct)
  })

  test('are as many as said, all different as partitions, keep sizes within blocks, and hold the observed one', () => {
    fc.assert(
      fc.property(layout, (units) => {
        const labels = units.map(({label}) => label)
        const blocks = units.map(({block}) => block)
        const plan = permutations(labels, {blocks, limit: 100_000, random})
        const every = [...plan.arrangements()]
        expect(every).toHaveLength(plan.distinct)
        expect(every).toContainEqual(plan.observed)
        const sizes = (arrangement: readonly number[]) =>
          arrangement.map((group, unit) => `${blocks[unit]}:${group}`).sort()
        for (const arrangement of every) expect(sizes(arrangement)).toEqual(sizes(plan.observed))
        // Groups that differ in size in some block keep their names, so two partitions may look alike.
        expect(new Set(every.map((arrangement) => arrangement.join(''))).size).toBe(plan.distinct)
      }),
      {numRuns: 60}
    )
  })

  test('of equal groups are each a partition of its own', () => {
    const every = [...permutations([0, 0, 1, 1, 2, 2], {limit: 999, random}).arrangements()]
    expect(every).toHaveLength(15)
    expect(new Set(every.map(partition)).size).toBe(15)
  })

  test('of pairs in blocks are half the ways to toss a coin for each', () => {
    const labels = ['a', 'b', 'a', 'b', 'a', 'b', 'a', 'b']
    const plan = permutations(labels, {blocks: [1, 1, 2, 2, 3, 3, 4, 4], limit: 99, random})
    expect(plan.distinct).toBe(8)
  })

  test('of one group, or of blocks with one habitat each, are one', () => {
    expect(permutations(['a', 'a'], {limit: 9, random}).smallestP).toBe(1)
    expect(permutations(['a', 'a', 'b', 'b'], {blocks: [1, 1, 2, 2], limit: 9, random}).smallestP).toBe(1)
  })

  test('are counted no further than whole numbers reach', () => {
    const labels = Array.from({length: 2000}, (_, unit) => unit % 2)
    expect(permutations(labels, {limit: 9, random}).distinct).toBe(Number.MAX_SAFE_INTEGER)
  })
})

describe('random arrangements', () => {
  const labels = Array.from({length: 16}, (_, unit) => unit % 2)
  const blocks = labels.map((_, unit) => Math.floor(unit / 8))
  const draw = () => permutations(labels, {blocks, limit: 200, random: randomStream(7, 'draw')})

  test('are as many as asked for, and keep the sizes within blocks', () => {
    const plan = draw()
    expect(plan).toMatchObject({exhaustive: false, tried: 200, smallestP: 1 / 201})
    const every = [...plan.arrangements()]
    expect(every).toHaveLength(200)
    for (const arrangement of every) {
      for (const block of [0, 1]) {
        expect(arrangement.filter((group, unit) => blocks[unit] === block && group === 1)).toHaveLength(4)
      }
    }
  })

  test('are the same for the same seed and name', () => {
    expect([...draw().arrangements()]).toEqual([...draw().arrangements()])
  })

  test('put every unit into every group about equally often', () => {
    const plan = permutations(labels, {limit: 4000, random: randomStream(2, 'even')})
    const shares = labels.map(() => 0)
    for (const arrangement of plan.arrangements()) {
      for (const [unit, group] of arrangement.entries()) shares[unit]! += group / 4000
    }
    // Five standard errors of a share of one half.
    for (const share of shares) expect(Math.abs(share - 0.5)).toBeLessThan(0.04)
  })
})

describe('p by permutation', () => {
  const plan = permutations(['a', 'a', 'a', 'b', 'b', 'b'], {limit: 99, random})

  test('counts arrangements that tie with the observed one, to within the tolerance', () => {
    const noisy = (arrangement: readonly number[]) => 0.3 - (arrangement === plan.observed ? 0 : 1e-14)
    expect(permutationTest({permutations: plan, statistic: noisy, tolerance: 1e-9}).p).toBe(1)
    expect(permutationTest({permutations: plan, statistic: noisy, tolerance: 0}).p).toBeLessThan(1)
  })

  test('counts the observed arrangement among those drawn', () => {
    const drawn = permutations(
      Array.from({length: 20}, (_, unit) => unit % 2),
      {limit: 99, random}
    )
    const statistic = (arrangement: readonly number[]) => (arrangement === drawn.observed ? 1 : 0)
    expect(permutationTest({permutations: drawn, statistic, tolerance: 1e-9}).p).toBe(0.01)
  })

  test('refuses blocks that do not match the units', () => {
    expect(() => permutations(['a', 'b'], {blocks: [1], limit: 9, random})).toThrow(RangeError)
  })
})
