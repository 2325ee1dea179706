import {expect, test} from 'vitest'
import {rankAbundance} from '../../src/charts/rank-abundance.ts'
import {bareHabitat, manyHabitats, measure, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const [figure] = rankAbundance.figures(results)

test('the data are all ranks of all habitats', () => {
  const ranks = results.scopes[0]!.habitats.flatMap((habitat) => habitat.ranks)
  expect(column(figure, 'individuals')).toEqual(ranks.map(({individuals}) => individuals))
  expect(column(figure, 'share')).toEqual(ranks.map(({share}) => share))
})

test('each species is a point, and the axis holds one individual and the most', () => {
  const points = specValues(figure).filter(({rank}) => rank !== undefined)
  expect(points).toHaveLength(18 + 28 + 11)
  const domains = [...JSON.stringify(figure?.spec).matchAll(/"type":"log","domain":\[([\d.]+),([\d.]+)\]/g)]
  expect(domains).toHaveLength(4)
  for (const [, low, high] of domains) {
    expect(Number(low)).toBeLessThan(1)
    expect(Number(high)).toBeGreaterThan(188)
  }
})

test('the three commonest species are named with their numbers, species names in italics and others upright', () => {
  const named = specValues(figure).filter(({italic}) => italic !== undefined)
  expect(named).toContainEqual({y: 6, individuals: '188', name: 'Pterostichus melanarius', italic: true})
  const taxa = results.taxa.map((taxon) => ({...taxon, rank: 'family'}))
  const upright = specValues(rankAbundance.figures({...results, taxa})[0])
  expect(upright.filter(({italic}) => italic === true)).toEqual([])
})

test('a habitat without catch has a panel that says so', () => {
  expect(specTexts(figure)).toContain('none caught')
  expect(figure?.alternative).toContain('Quarry floor: none caught.')
})

test('the description names the commonest species with numbers and shares', () => {
  expect(figure?.alternative).toContain(
    'Oak wood: 548 individuals of 18 species, 4 of them caught once; the commonest: Pterostichus melanarius (188, 34 %)'
  )
})

test('animals that count as no species are mentioned', () => {
  const [scope] = results.scopes
  const leftOutIndividuals = measure('left out', 'count', 7)
  const [some] = rankAbundance.figures({...results, scopes: [{...scope!, leftOutIndividuals}]})
  expect(some?.alternative).toContain('Left out, because they count as no species: 7 individuals.')
  expect(figure?.alternative).not.toContain('Left out')
})

test('twelve habitats stand in three columns', () => {
  const [many] = rankAbundance.figures(resultsOf(manyHabitats(12)))
  expect(many?.spec).toMatchObject({columns: 3})
  expect(many?.spec?.concat).toHaveLength(12)
})

test('without catch in the scope there is no picture, and without scopes none is named', () => {
  expect(rankAbundance.figures(resultsOf([bareHabitat]))[0]).toMatchObject({
    notDrawn: 'nothing in this scope was caught'
  })
  expect(rankAbundance.figures(resultsOf([]))).toEqual([])
})
