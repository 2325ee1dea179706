import {expect, test} from 'vitest'
import {numberOf, tinyResults, twoPlaces} from './tiny-study.ts'

test('every name stands with its counts by habitat and site, its sexes and its rounds', () => {
  const {taxa} = tinyResults({
    ...twoPlaces,
    catch: [
      ...twoPlaces.catch!,
      ['W1', '2026-06-01', 'Abax ater', 6, {lifeStage: 'larva'}],
      ['W1', '2026-05-20', 'Abax ater', 1]
    ]
  })
  const abax = taxa.find(({taxon}) => taxon === 'Abax ater')!
  expect(abax).toMatchObject({
    rank: 'species',
    family: 'Carabidae',
    inTaxaTable: true,
    firstRound: '1',
    lastRound: '2'
  })
  expect(
    [
      abax.individuals,
      abax.outsideEffort,
      abax.total,
      abax.females,
      abax.males,
      abax.immatures,
      abax.sites
    ].map(numberOf)
  ).toEqual([15, 1, 16, 5, 3, 6, 2])
  expect(numberOf(abax.share)).toBe(15 / 25)
  expect(numberOf(abax.rate)).toBeCloseTo((15 / 112) * 100, 9)
  expect(
    abax.habitats.map(({id, individuals, outsideEffort, sites}) => [
      id,
      ...[individuals, outsideEffort, sites].map(numberOf)
    ])
  ).toEqual([
    ['wood', 14, 1, 1],
    ['meadow', 1, 0, 1]
  ])
  expect(abax.bySite.map(({id, total}) => [id, numberOf(total)])).toEqual([
    ['M', 1],
    ['W', 15]
  ])
})

test('a name that taxa.csv does not have is used, ungrouped', () => {
  const {taxa, catch: caught} = tinyResults({...twoPlaces, taxa: {}})
  expect(taxa.map(({taxon, inTaxaTable}) => [taxon, inTaxaTable])).toEqual([
    ['Abax ater', false],
    ['Carabus nemoralis', false],
    ['Poecilus cupreus', false]
  ])
  expect(numberOf(caught.individuals)).toBe(19)
})

test('the names of all taxa sum to the catch', () => {
  const {taxa, catch: caught} = tinyResults(twoPlaces)
  expect(taxa.reduce((sum, {total}) => sum + Number(numberOf(total)), 0)).toBe(numberOf(caught.total))
  expect(taxa).toHaveLength(Number(numberOf(caught.names)))
})
