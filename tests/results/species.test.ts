import {describe, expect, test} from 'vitest'
import type {Taxon} from '../../src/model/study.ts'
import {recordedNames} from '../../src/results/recorded-names.ts'
import {speciesDecisions} from '../../src/results/species.ts'

function decisions(names: Readonly<Record<string, Partial<Taxon> | undefined>>) {
  const taxa = Object.entries(names).flatMap(([taxon, said], row) =>
    said === undefined ? [] : [{row, taxon, ...said}]
  )
  const records = Object.keys(names).map((taxon, row) => ({
    row,
    taxon,
    count: 1,
    lifeStage: 'adult',
    sampleFraction: 1
  }))
  const decided = speciesDecisions(recordedNames(taxa, records).names)
  return Object.fromEntries([...decided].map(([{name}, {species, leftOut}]) => [name, leftOut ?? species]))
}

describe('what counts as a species', () => {
  test('species count, and subspecies as their species', () => {
    expect(
      decisions({
        'Carabus nemoralis': {rank: 'species'},
        'Dicaelus dilatatus dilatatus': {rank: 'subspecies'},
        'Carabus (Archicarabus) nemoralis nemoralis': {rank: 'subspecies'}
      })
    ).toEqual({
      'Carabus nemoralis': 'Carabus nemoralis',
      'Dicaelus dilatatus dilatatus': 'Dicaelus dilatatus',
      'Carabus (Archicarabus) nemoralis nemoralis': 'Carabus nemoralis'
    })
  })

  test('a genus counts only where no finer name within it occurs', () => {
    expect(
      decisions({Amara: {rank: 'genus'}, Bembidion: {rank: 'genus'}, 'Amara aenea': {rank: 'species'}})
    ).toEqual({
      Amara: 'it names only a genus, and finer names of Amara were caught',
      Bembidion: 'Bembidion',
      'Amara aenea': 'Amara aenea'
    })
  })

  test('a family counts only where no finer name within it occurs, a genus included', () => {
    expect(
      decisions({
        Carabidae: {rank: 'family'},
        Amara: {rank: 'genus', family: 'Carabidae'},
        Lycosidae: {rank: 'family'}
      })
    ).toEqual({
      Carabidae: 'it names only a family, and finer names of Carabidae were caught',
      Amara: 'Amara',
      Lycosidae: 'Lycosidae'
    })
  })

  test('a subfamily or tribe gives way to any finer name of its family', () => {
    expect(
      decisions({
        Harpalinae: {rank: 'subfamily', family: 'Carabidae'},
        'Amara aenea': {rank: 'species', family: 'Carabidae'},
        Aleocharinae: {rank: 'subfamily', family: 'Staphylinidae'}
      })
    ).toMatchObject({
      Harpalinae: 'it names only a group within a family, and finer names of Carabidae were caught',
      Aleocharinae: 'Aleocharinae'
    })
  })

  test('groups above the family never count', () => {
    expect(decisions({Araneae: {rank: 'order'}})).toEqual({Araneae: 'it names only a group above the family'})
  })

  test('a morphospecies counts, and stands for its genus or family', () => {
    expect(
      decisions({
        'Lycosidae sp. 1': {rank: 'morphospecies', family: 'Lycosidae'},
        Lycosidae: {rank: 'family'}
      })
    ).toMatchObject({
      'Lycosidae sp. 1': 'Lycosidae sp. 1',
      Lycosidae: 'it names only a family, and finer names of Lycosidae were caught'
    })
  })

  test('the form of a name shows its rank where taxa.csv does not', () => {
    expect(
      decisions({
        'Pterostichus niger': undefined,
        'Pterostichus sp.': undefined,
        'Trechus sp.': undefined,
        'Philonthus sp. 2': undefined,
        'D02.2014.MorphA': {family: 'Carabidae'},
        Staphylinidae: undefined,
        Coleoptera: undefined,
        'Xantholinus linearis': {order: 'Coleoptera', family: 'Staphylinidae'}
      })
    ).toEqual({
      'Pterostichus niger': 'Pterostichus niger',
      'Pterostichus sp.': 'it names only a genus, and finer names of Pterostichus were caught',
      'Trechus sp.': 'Trechus sp.',
      'Philonthus sp. 2': 'Philonthus sp. 2',
      'D02.2014.MorphA': 'D02.2014.MorphA',
      Staphylinidae: 'it names only a family, and finer names of Staphylinidae were caught',
      Coleoptera: 'it names only a group above the family',
      'Xantholinus linearis': 'Xantholinus linearis'
    })
  })
})

describe('names in the catch', () => {
  const record = (taxon: string, count = 1) => ({row: 0, taxon, count, lifeStage: 'adult', sampleFraction: 1})

  test('a synonym counts as its accepted name, with the group of either', () => {
    const taxa = [{row: 0, taxon: 'Feronia nigra', acceptedName: 'Pterostichus niger', family: 'Carabidae'}]
    const {names, of} = recordedNames(taxa, [record('Feronia nigra'), record('Pterostichus niger')])
    expect(names.map(({name, taxon}) => [name, taxon?.family])).toEqual([['Pterostichus niger', 'Carabidae']])
    expect(of('Feronia nigra')).toBe(of('Pterostichus niger'))
  })

  test('a circle of accepted names ends', () => {
    const taxa = [
      {row: 0, taxon: 'A b', acceptedName: 'C d'},
      {row: 1, taxon: 'C d', acceptedName: 'A b'}
    ]
    expect(recordedNames(taxa, [record('A b')]).names).toHaveLength(1)
  })

  test('names stand by class, order, family and name, ungrouped ones last, and uncaught ones not at all', () => {
    const taxa = [
      {row: 0, taxon: 'Zabrus b', class: 'Insecta', order: 'Coleoptera', family: 'Carabidae'},
      {row: 1, taxon: 'Abax a', class: 'Insecta', order: 'Coleoptera', family: 'Carabidae'},
      {row: 2, taxon: 'Pardosa a', class: 'Arachnida', order: 'Araneae', family: 'Lycosidae'},
      {row: 3, taxon: 'Never seen'}
    ]
    const records = ['Zabrus b', 'Aa unknown', 'Abax a', 'Pardosa a'].map((taxon) => record(taxon))
    const {names} = recordedNames(taxa, [...records, record('Counted zero', 0)])
    expect(names.map(({name}) => name)).toEqual(['Pardosa a', 'Abax a', 'Zabrus b', 'Aa unknown'])
  })
})
