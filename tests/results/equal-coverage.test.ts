import {expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {madeStudy, twoHabitats} from './made-study.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

/** Spiders of girdled and logged hemlock plots (Chao et al. 2014, from memory). */
const girdled = [46, 22, 17, 15, 15, 9, 8, 6, 6, 4, 2, 2, 2, 2, ...Array<number>(12).fill(1)]
const logged = [
  88,
  22,
  16,
  15,
  13,
  10,
  8,
  8,
  7,
  7,
  7,
  5,
  4,
  4,
  4,
  3,
  3,
  3,
  3,
  2,
  2,
  2,
  2,
  ...Array<number>(14).fill(1)
]

test('habitats are compared at the coverage that the least complete one reaches with twice its catch', () => {
  const {equalCoverage} = tinyResults(madeStudy({girdled: [girdled], logged: [logged]})).scopes[0]!
  expect(numberOf(equalCoverage.coverage)).toBeCloseTo(0.96357, 5)
  const [first, second] = equalCoverage.habitats
  expect(first).toMatchObject({id: 'girdled', beyond: true})
  expect(numberOf(first!.size)).toBeCloseTo(336, 6)
  expect(numberOf(first!.q0)).toBeCloseTo(34.7307, 3)
  // Size of the logged plots at that coverage: the check of the formulas of Chao et al. 2014.
  expect(numberOf(second!.size)).toBeCloseTo(436.57, 1)
  expect(isDefined(second!.q1) && second!.q1.interval!.low).toBeLessThan(numberOf(second!.q1) as number)
  expect(equalCoverage.leftOut).toEqual([])
})

test('a habitat with too little coverage is left out, named, with the reason', () => {
  const {equalCoverage} = tinyResults(madeStudy({...twoHabitats, heath: [[1, 1, 1, 1, 2]], bog: [[1]]}))
    .scopes[0]!
  expect(equalCoverage.habitats.map(({id}) => id)).toEqual(['meadow', 'wood'])
  expect(equalCoverage.leftOut.map(({id}) => id)).toEqual(['bog', 'heath'])
  expect(equalCoverage.leftOut[0]!.reason).toContain('its coverage is not defined')
  expect(equalCoverage.leftOut[1]!.reason).toContain('below 0.5')
})

test('sites stand beside the habitats at the same coverage where it is defined for them, without intervals', () => {
  const {equalCoverage} = tinyResults(madeStudy({...twoHabitats, wood: [...twoHabitats.wood!, [1, 1]]}))
    .scopes[0]!
  expect(equalCoverage.sites.map(({id, habitat}) => [id, habitat]).at(0)).toEqual(['meadow1', 'meadow'])
  const [site] = equalCoverage.sites
  expect(isDefined(site!.q1) && site!.q1.interval === undefined).toBe(true)
  expect(numberOf(equalCoverage.sites.at(-1)!.q0)).toBe('every species was caught only once')
})

test('one habitat alone has no common coverage', () => {
  const {equalCoverage} = tinyResults(madeStudy({wood: twoHabitats.wood!})).scopes[0]!
  expect(numberOf(equalCoverage.coverage)).toContain('fewer than two samples')
  expect([equalCoverage.habitats, equalCoverage.sites]).toEqual([[], []])
})
