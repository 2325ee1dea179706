import {describe, expect, test} from 'vitest'
import type {Settings} from '../../src/model/settings.ts'
import type {Site} from '../../src/model/study.ts'
import {sitePosition} from '../../src/results/site-position.ts'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

const site: Site = {row: 0, siteId: 'A', habitat: 'wood', latitude: 38.895217, longitude: -78.142694}

describe('position of a site as others may see it', () => {
  const shown = (own: Partial<Site>, settings: Settings = {}, category?: number) => {
    const {shown: how, latitude, longitude, precision} = sitePosition({...site, ...own}, settings, category)
    return [how, latitude, longitude, precision]
  }

  test('it is rounded to 0.01 degrees unless more was allowed', () => {
    expect(shown({})).toEqual(['rounded', '38.90', '-78.14', '0.01'])
    expect(sitePosition(site, {}, undefined).because).toBe(
      'positions are shown to 0.01 degrees unless more was allowed'
    )
  })

  test('study.yaml decides for all sites, sites.csv for its own', () => {
    expect(shown({}, {privacy: {coordinates: 0.1}})).toEqual(['rounded', '38.9', '-78.1', '0.1'])
    expect(shown({}, {privacy: {coordinates: 'none'}})).toEqual(['withheld', undefined, undefined, undefined])
    expect(shown({coordinatesShown: '0.001'}, {privacy: {coordinates: 'none'}})).toEqual([
      'rounded',
      '38.895',
      '-78.143',
      '0.001'
    ])
    expect(shown({coordinatesShown: 'exact'})).toEqual(['exact', '38.895217', '-78.142694', undefined])
  })

  test.each([
    [1, 'withheld', undefined],
    [2, 'rounded', '0.1'],
    [3, 'rounded', '0.01'],
    [4, 'rounded', '0.001']
  ] as const)(
    'a sensitive taxon of category %i makes an exact position %s (%s)',
    (category, how, precision) => {
      const position = sitePosition({...site, coordinatesShown: 'exact'}, {}, category)
      expect([position.shown, position.precision]).toEqual([how, precision])
      expect(position.because).toBe('kinds that need protection were recorded there')
    }
  )

  test('a sensitive taxon never makes a position finer', () => {
    expect(shown({coordinatesShown: '0.1'}, {}, 4)).toEqual(['rounded', '38.9', '-78.1', '0.1'])
    expect(shown({coordinatesShown: 'none'}, {}, 2)).toEqual(['withheld', undefined, undefined, undefined])
  })

  test('nothing rounds to minus zero, and nothing is made up', () => {
    expect(shown({latitude: -0.001, longitude: 0.001})).toEqual(['rounded', '0.00', '0.00', '0.01'])
    expect(sitePosition({row: 0, siteId: 'A', habitat: 'wood'}, {}, 1)).toEqual({shown: 'not recorded'})
  })
})

const sensitive: Tiny = {
  ...twoPlaces,
  sites: {
    M: 'meadow',
    W: {
      habitat: 'wood',
      siteName: 'Hollow Wood',
      latitude: 50.12345,
      longitude: 8.54321,
      locality: 'Upper Mill',
      coordinatesShown: 'exact',
      elevationM: 312,
      litterDepthMm: 20
    }
  },
  taxa: {
    ...twoPlaces.taxa,
    'Carabus nemoralis': {
      ...twoPlaces.taxa!['Carabus nemoralis'],
      sensitive: 1,
      legalStatus: 'strictly protected'
    }
  }
}

test('a kind of category 1 withholds the position and place of its site, and is counted there without its name', () => {
  const results = tinyResults(sensitive)
  const wood = results.sites.find(({id}) => id === 'W')!
  expect(wood.position.shown).toBe('withheld')
  expect(wood.locality).toBeUndefined()
  expect(wood.taxa.map(({taxon}) => taxon)).toEqual(['Abax ater'])
  expect(numberOf(wood.withheldTaxa)).toBe(1)
  expect(wood.listed).toEqual([])
  const carabus = results.taxa.find(({taxon}) => taxon === 'Carabus nemoralis')!
  expect(carabus.bySite).toEqual([])
  expect(numberOf(carabus.total)).toBe(3)
  expect(JSON.stringify(results)).not.toContain('50.12')
  expect(JSON.stringify(results.sites)).not.toContain('Carabus')
})

test('a synonym keeps the sensitivity of its own row', () => {
  const wood = tinyResults({
    ...sensitive,
    taxa: {
      ...twoPlaces.taxa,
      'Carabus nemoralis': {acceptedName: 'Carabus alias', sensitive: 2},
      'Carabus alias': {}
    }
  }).sites.find(({id}) => id === 'W')!
  expect(wood.position.precision).toBe('0.1')
  expect(numberOf(wood.withheldTaxa)).toBe(1)
})

test('a site lists its kinds, most numerous first, and those that are protected or red-listed', () => {
  const wood = tinyResults({
    ...twoPlaces,
    catch: [...twoPlaces.catch!, ['W1', '2026-05-20', 'Carabus nemoralis', 9]],
    taxa: {
      ...twoPlaces.taxa,
      'Carabus nemoralis': {legalStatus: 'protected', redList: 'VU'},
      'Abax ater': {redList: 'LC'}
    }
  }).sites.find(({id}) => id === 'W')!
  expect(
    wood.taxa.map(({taxon, individuals, total}) => [taxon, numberOf(individuals), numberOf(total)])
  ).toEqual([
    ['Carabus nemoralis', 3, 12],
    ['Abax ater', 8, 8]
  ])
  expect(wood.listed.map(({taxon, status, total}) => [taxon, status, numberOf(total)])).toEqual([
    ['Carabus nemoralis', 'protected; red list: VU', 12]
  ])
})

test('a site has its structure and the removal of its traps as recorded', () => {
  const results = tinyResults({
    ...sensitive,
    traps: {...twoPlaces.traps, W1: {siteId: 'W', removed: 20605}, W2: 'W'}
  })
  const wood = results.sites.find(({id}) => id === 'W')!
  expect(wood.name).toBe('Hollow Wood')
  expect(
    wood.structure.map(({label, unit, ...measure}) => [label, numberOf({label, ...measure}), unit?.[1]])
  ).toEqual([
    ['Elevation', 312, undefined],
    ['Depth of the litter', 20, 'mm']
  ])
  expect(numberOf(wood.removal.recorded)).toBe(1)
  expect(numberOf(wood.removal.notRecorded)).toBe(1)
  expect(wood.removal.lastRemoved).toBe('2026-06-01')
  expect(wood).toMatchObject({firstOpened: '2026-05-04', lastCollected: '2026-06-01'})
})

test('kinds worth knowing are those with a note: listed ones first, sensitive ones never', () => {
  const wood = tinyResults({
    ...twoPlaces,
    catch: [...twoPlaces.catch!, ['W1', '2026-05-18', 'Carabus auratus', 30]],
    taxa: {
      'Abax ater': {note: 'a hunter of the dark'},
      'Carabus nemoralis': {
        note: 'it sleeps in dead wood',
        legalStatus: 'protected',
        englishName: 'bronze beetle'
      },
      'Carabus auratus': {note: 'it may not be named', sensitive: 2}
    }
  }).sites.find(({id}) => id === 'W')!
  expect(wood.worthKnowing.map(({taxon, englishName, note}) => [taxon, englishName, note])).toEqual([
    ['Carabus nemoralis', 'bronze beetle', 'it sleeps in dead wood'],
    ['Abax ater', undefined, 'a hunter of the dark']
  ])
})

test('why nights were lost is what was found there, dearest first, and nothing else', () => {
  const {sites} = tinyResults({
    settings: {no_catch_rows: 'empty'},
    sites: {s1: 'wood', s2: 'wood'},
    traps: {a: 's1', b: 's1', c: 's2'},
    visits: [
      ['a', '2026-05-01', '2026-05-08', {condition: 'missing'}],
      ['a', '2026-05-08', '2026-05-15', {condition: 'overflowed'}],
      ['b', '2026-05-01', '2026-05-08', {sample: 'lost'}],
      ['b', '2026-05-08', '2026-05-15', {condition: 'missing'}],
      ['c', '2026-05-01', '2026-05-08'],
      ['c', '2026-05-08', '2026-05-15']
    ],
    catch: [['a', '2026-05-15', 'Abax ater', 2]]
  })
  expect(sites[0]!.lostBecause).toEqual([
    'traps were gone',
    'a sample was lost later on',
    'a trap was flooded'
  ])
  expect(numberOf(sites[0]!.removal.gone)).toBe(2)
  expect(sites[1]!.lostBecause).toEqual([])
  expect(numberOf(sites[1]!.removal.gone)).toBe(0)
})

test('kinds are species as diversity counts them, within the effort', () => {
  const {sites} = tinyResults({
    settings: {no_catch_rows: 'empty'},
    sites: {s1: 'wood'},
    traps: {a: 's1'},
    visits: [['a', '2026-05-01', '2026-05-08']],
    catch: [
      ['a', '2026-05-08', 'Abax ater', 2],
      ['a', '2026-05-08', 'Abax ovalis', 1],
      ['a', '2026-05-08', 'Abax sp.', 4]
    ]
  })
  expect(numberOf(sites[0]!.kinds.species)).toBe(2)
  expect(numberOf(sites[0]!.kinds.others)).toBe(4)
  expect(numberOf(sites[0]!.groups[0]!.species)).toBe(2)
})
