import fc from 'fast-check'
import {expect, test} from 'vitest'
import {type MadeHabitats, madeStudy, twoHabitats} from './made-study.ts'
import {tinyResults} from './tiny-study.ts'

const counts = fc.array(fc.integer({min: 0, max: 12}), {minLength: 6, maxLength: 6})
const sitesOf = (least: number) => fc.array(counts, {minLength: least, maxLength: 4})

test('adding a habitat changes no number and no interval of the diversity of another', () => {
  fc.assert(
    fc.property(sitesOf(1), sitesOf(1), (wood, heath) => {
      const alone = tinyResults(madeStudy({wood})).scopes[0]!.habitats[0]!
      const beside = tinyResults(madeStudy({wood, heath})).scopes[0]!.habitats.find(({id}) => id === 'wood')!
      expect({...beside, style: 0}).toEqual({...alone, style: 0})
    }),
    {numRuns: 20}
  )
})

test('adding a habitat that cannot be compared changes no test of the others', () => {
  const before = tinyResults(madeStudy(twoHabitats))
  const after = tinyResults(madeStudy({...twoHabitats, zone: [[1, 2, 3, 4, 5, 6]]}))
  expect(after.comparison.test).toEqual(before.comparison.test)
  expect(after.comparison.ratios).toEqual(before.comparison.ratios)
  expect(after.scopes[0]!.composition.permanova).toEqual(before.scopes[0]!.composition.permanova)
  expect(after.scopes[0]!.indicators.species).toEqual(before.scopes[0]!.indicators.species)
})

test('every refusal has a reason, and every comparison its habitats, whatever was caught where', () => {
  fc.assert(
    fc.property(sitesOf(1), sitesOf(1), (wood, meadow) => {
      const {comparison, scopes} = tinyResults(madeStudy({wood, meadow}))
      expect(comparison.supported).toBe(wood.length > 1 && meadow.length > 1)
      expect(comparison.reasons.length > 0).toBe(!comparison.supported)
      expect(comparison.habitats).toHaveLength(comparison.supported ? 2 : 0)
      for (const {equalCoverage} of scopes) {
        const {habitats, leftOut} = equalCoverage
        expect(habitats.length === 0 || habitats.length + leftOut.length === 2).toBe(true)
      }
    }),
    {numRuns: 25}
  )
})

test('a species in every site of one habitat and no other has the indicator value 1, whatever else is caught', () => {
  fc.assert(
    fc.property(sitesOf(2), sitesOf(2), (wood, meadow) => {
      const habitats: MadeHabitats = {
        wood: wood.map((own) => [...own, 3]),
        meadow: meadow.map((own) => [...own, 0])
      }
      const {species} = tinyResults(madeStudy(habitats)).scopes[0]!.indicators
      const only = species.find(({taxon}) => taxon === 'Genus speciesag')!
      expect(only).toMatchObject({id: 'wood', value: {value: 1}})
    }),
    {numRuns: 20}
  )
})

test('asymptotic diversity falls with its order, wherever it is defined', () => {
  fc.assert(
    fc.property(sitesOf(1), (wood) => {
      const {hill} = tinyResults(madeStudy({wood})).scopes[0]!.study
      const values = [hill.q0, hill.q1, hill.q2].flatMap(({asymptotic}) => {
        return 'value' in asymptotic ? [asymptotic.value] : []
      })
      expect(values.every((value, order) => order === 0 || value <= values[order - 1]! + 1e-9)).toBe(true)
    }),
    {numRuns: 25}
  )
})
