import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {indicatorValue} from '../../src/statistics/indicator-value.ts'
import {indicatorValueTest} from '../../src/statistics/indicator-value-test.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {numberOf} from './number-of.ts'

const groups = ['a', 'a', 'a', 'a', 'b', 'b', 'b', 'b']
const options = {limit: 999, random: randomStream(1, 'indicator values')}
const rates = fc.array(fc.integer({min: 0, max: 20}), {minLength: 8, maxLength: 8})

test('a species in every site of one habitat and no other has an indicator value of 100 %', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({min: 0.01, max: 1e4, noNaN: true}), {minLength: 4, maxLength: 4}),
      (catches) => {
        expect(indicatorValue([0, 0, 0, 0, ...catches], groups)).toEqual({
          group: 'b',
          specificity: 1,
          fidelity: 1,
          value: 1
        })
      }
    )
  )
})

test('an indicator value is specificity times fidelity, from 0 to 1, whatever the unit of effort', () => {
  fc.assert(
    fc.property(rates, (values) => {
      const found = indicatorValue(values, groups)
      fc.pre(found !== undefined)
      expect(found!.value).toBeCloseTo(found!.specificity * found!.fidelity, 12)
      expect(found!.value).toBeGreaterThan(0)
      expect(found!.value).toBeLessThanOrEqual(1 + 1e-12)
      expect(
        indicatorValue(
          values.map((value) => value * 0.37),
          groups
        )!.value
      ).toBeCloseTo(found!.value, 10)
    })
  )
})

test('means of groups, not sums, make the specificity where habitats have unequal numbers of sites', () => {
  // Mean 2 in both habitats: as specific to one as to the other.
  const found = indicatorValue([2, 2, 2, 2, 2, 2], ['a', 'b', 'b', 'b', 'b', 'b'])
  expect(found).toEqual({group: 'a', specificity: 0.5, fidelity: 1, value: 0.5})
})

test('the order of sites does not matter to indicator values and their p', () => {
  fc.assert(
    fc.property(fc.array(rates, {minLength: 1, maxLength: 1}), (catches) => {
      const forward = indicatorValueTest(catches, groups, options)
      const backward = indicatorValueTest(
        catches.map((values) => [...values].reverse()),
        [...groups].reverse(),
        options
      )
      expect(backward.species.map(({value}) => value.toFixed(10))).toEqual(
        forward.species.map(({value}) => value.toFixed(10))
      )
      expect(backward.species.map(({p}) => p)).toEqual(forward.species.map(({p}) => p))
    }),
    {numRuns: 40}
  )
})

describe('the test of indicator values', () => {
  test('gives the perfect indicator the smallest p that four sites in each of two habitats allow', () => {
    const {species, adjustedFloor, withheld, scheme} = indicatorValueTest(
      [[1, 2, 3, 4, 0, 0, 0, 0]],
      groups,
      options
    )
    expect(scheme).toMatchObject({distinct: 35, exhaustive: true})
    expect(species[0]!.p).toEqual({value: 1 / 35})
    expect(adjustedFloor).toBeCloseTo(1 / 35, 12)
    expect(withheld).toBe(false)
  })

  test('gives values without p where the floor times the species tested exceeds 0.05', () => {
    const catches = [
      [1, 2, 3, 4, 0, 0, 0, 0],
      [0, 2, 0, 4, 1, 0, 0, 0],
      [0, 0, 0, 0, 0, 0, 0, 0]
    ]
    const result = indicatorValueTest(catches, groups, options)
    expect(result.tested).toBe(2)
    expect(result.adjustedFloor).toBeCloseTo(2 / 35, 12)
    expect(result.withheld).toBe(true)
    expect(result.species.map(({species, value}) => [species, value])).toEqual([
      [0, 1],
      [1, (6 / 7) * 0.5]
    ])
    expect(result.species.every(({p, adjustedP}) => !isDefined(p) && !isDefined(adjustedP))).toBe(true)
  })

  test('adjusts p over the species tested, and a species more does not change the p of another', () => {
    const many = Array.from({length: 14}, (_, unit) => (unit < 7 ? 'a' : 'b'))
    const first = many.map((group, unit) => (group === 'a' ? 5 + unit : unit % 2))
    const second = many.map((_, unit) => unit % 3)
    const draw = (catches: readonly (readonly number[])[]) =>
      indicatorValueTest(catches, many, {limit: 499, random: randomStream(3, 'species')})
    const alone = draw([first])
    const both = draw([first, second])
    expect(both.species[0]!.p).toEqual(alone.species[0]!.p)
    expect(numberOf(both.species[0]!.adjustedP)).toBeCloseTo(2 * numberOf(alone.species[0]!.p), 12)
  })

  test('has nothing to say of one habitat', () => {
    const {species} = indicatorValueTest([[1, 0]], ['a', 'a'], options)
    expect(species[0]!.p).toEqual({notDefined: 'there are fewer than two groups'})
    expect(species[0]!.value).toBe(0.5)
  })
})
