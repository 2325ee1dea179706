import {expect, test} from 'vitest'
import {madeStudy, speciesName, twoHabitats} from './made-study.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

test('a species of every site of one habitat and no other has the value 1', () => {
  const {species} = tinyResults(
    madeStudy({
      wood: [
        [5, 1],
        [2, 4]
      ],
      meadow: [
        [0, 3],
        [0, 2]
      ]
    })
  ).scopes[0]!.indicators
  expect(species[0]).toMatchObject({taxon: speciesName(0), id: 'wood'})
  expect([species[0]!.specificity, species[0]!.fidelity, species[0]!.value].map(numberOf)).toEqual([1, 1, 1])
})

test('p is left out where its floor times the species tested exceeds 0.05, and the reason is a sentence', () => {
  const {withheld, message, adjustedFloor, tested, species} = tinyResults(madeStudy(twoHabitats)).scopes[0]!
    .indicators
  expect(withheld).toBe(true)
  expect(numberOf(tested)).toBe(6)
  expect(numberOf(adjustedFloor)).toBeCloseTo(0.6)
  expect(message).toBe(
    'p is not given, because the smallest p that the design allows, times the 6 species tested, exceeds 0.05.'
  )
  expect(numberOf(species[0]!.p)).toContain('exceeds 0.05')
  expect(typeof numberOf(species[0]!.value)).toBe('number')
})

test('p is given, and adjusted, where enough sites were sampled', () => {
  const sites = (first: number, second: number) =>
    Array.from({length: 5}, (_, index) => [first + index, second + index])
  const {withheld, message, species, permutations} = tinyResults(
    madeStudy({wood: sites(20, 0), meadow: sites(1, 9)})
  ).scopes[0]!.indicators
  expect(withheld).toBe(false)
  expect(message).toBeUndefined()
  expect(numberOf(permutations.distinct)).toBe(126)
  expect(numberOf(species[0]!.p)).toBeCloseTo(1 / 126)
  expect(numberOf(species[0]!.adjustedP)).toBeCloseTo(2 / 126)
})

test('values fall from line to line', () => {
  const {species} = tinyResults(madeStudy(twoHabitats)).scopes[0]!.indicators
  const values = species.map(({value}) => numberOf(value) as number)
  expect(values).toEqual([...values].sort((a, b) => b - a))
})

test('where the design forbids tests there are no indicator values, and the reason stands', () => {
  const {supported, reasons, species} = tinyResults(madeStudy({wood: [[1, 2]], meadow: [[2, 1]]})).scopes[0]!
    .indicators
  expect(supported).toBe(false)
  expect(reasons[0]).toContain('no habitat has more than one site')
  expect(species).toEqual([])
})
