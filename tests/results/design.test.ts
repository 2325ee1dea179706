import {expect, test} from 'vitest'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

/** Two habitats with two sites of one trap each, about 1.1 km apart in a row. */
const fourSites: Tiny = {
  settings: {no_catch_rows: 'empty', privacy: {coordinates: 'exact'}, trap_types: {cup: {}, jar: {}}},
  sites: {
    M1: {habitat: 'meadow', latitude: 50, longitude: 8},
    M2: {habitat: 'meadow', latitude: 50.01, longitude: 8},
    W1: {habitat: 'wood', latitude: 50.03, longitude: 8},
    W2: {habitat: 'wood', latitude: 50.06, longitude: 8}
  },
  traps: {m1: 'M1', m2: 'M2', w1: 'W1', w2: 'W2'},
  visits: ['m1', 'm2', 'w1', 'w2'].flatMap((trap) => [
    [trap, '2026-05-04', '2026-05-18', {round: 'I'}] as const,
    [trap, '2026-05-18', '2026-06-01', {round: 'II'}] as const
  ])
}

test('two habitats with two sites each and the same method support a comparison', () => {
  const {design} = tinyResults(fourSites)
  expect(design).toMatchObject({
    unit: 'site',
    supportsComparison: true,
    confounded: [],
    singleSiteHabitats: [],
    unsharedRounds: []
  })
  expect(numberOf(design.sharedRounds)).toBe(2)
})

test('a habitat that lies in one of several blocks is named', () => {
  const inBlocks = (blocks: readonly (string | undefined)[]) => {
    const sites = Object.entries(fourSites.sites ?? {}).map(([id, site], index) => {
      const block = blocks[index]
      return [id, typeof site === 'string' || block === undefined ? site : {...site, block}] as const
    })
    const {design} = tinyResults({...fourSites, sites: Object.fromEntries(sites)})
    return [design.blocks && numberOf(design.blocks), design.oneBlockHabitats]
  }
  expect(inBlocks(['a', 'b', 'a', 'b'])).toEqual([2, undefined])
  expect(inBlocks(['a', 'a', 'a', 'b'])).toEqual([2, ['meadow']])
  expect(inBlocks(['a', 'a', 'a', 'a'])).toEqual([1, undefined])
  expect(inBlocks(['a', undefined, 'b', 'b'])).toEqual([undefined, undefined])
})

test('a habitat with one site is named, and two of them support no comparison', () => {
  const {design} = tinyResults(twoPlaces)
  expect(design.singleSiteHabitats).toEqual(['beech wood', 'hay meadow'])
  expect(design.supportsComparison).toBe(false)
})

test('a site whose traps were all lost is no second site', () => {
  const lost = {
    ...fourSites,
    visits: fourSites.visits!.map((each) => {
      return each[0] === 'w2'
        ? ([each[0], each[1], each[2], {...each[3], condition: 'missing'}] as const)
        : each
    })
  }
  expect(tinyResults(lost).design).toMatchObject({singleSiteHabitats: ['wood'], supportsComparison: false})
})

test('a trap type that differs in line with habitat refuses the comparison', () => {
  const types = (...trapTypes: readonly string[]) =>
    tinyResults({
      ...fourSites,
      traps: {
        m1: {siteId: 'M1', trapType: trapTypes[0]!},
        m2: {siteId: 'M2', trapType: trapTypes[1]!},
        w1: {siteId: 'W1', trapType: trapTypes[2]!},
        w2: {siteId: 'W2', trapType: trapTypes[3]!}
      }
    }).design
  expect(types('cup', 'cup', 'jar', 'jar')).toMatchObject({
    confounded: [{what: 'trap type', detail: 'meadow: cup; wood: jar'}],
    supportsComparison: false
  })
  expect(types('cup', 'jar', 'jar', 'cup')).toMatchObject({confounded: [], supportsComparison: true})
  expect(types('cup', 'cup', 'cup', 'jar').confounded).toEqual([])
})

test('the cover of the trap types and the fluid of single exposures are looked at too', () => {
  const covered = tinyResults({
    ...fourSites,
    settings: {...fourSites.settings, trap_types: {cup: {cover: false}, jar: {cover: 'lid on nails'}}},
    traps: {
      m1: {siteId: 'M1', trapType: 'cup'},
      m2: {siteId: 'M2', trapType: 'cup'},
      w1: {siteId: 'W1', trapType: 'jar'},
      w2: {siteId: 'W2', trapType: 'jar'}
    },
    visits: fourSites.visits!.map(([trap, opened, collected, rest]) => {
      return [trap, opened, collected, {...rest, fluid: trap.startsWith('m') ? 'brine' : 'glycol'}] as const
    })
  })
  expect(covered.design.confounded.map(({what}) => what)).toEqual(['trap type', 'cover', 'fluid'])
})

test('intervals more than half as long again in one habitat refuse the comparison', () => {
  const interval = (days: string) =>
    tinyResults({
      ...fourSites,
      visits: ['m1', 'm2', 'w1', 'w2'].map((trap) => {
        return [trap, '2026-05-04', trap.startsWith('m') ? '2026-05-18' : `2026-05-${days}`] as const
      })
    }).design.confounded
  expect(interval('11')).toEqual([{what: 'interval', detail: 'meadow: 14 nights; wood: 7 nights'}])
  expect(interval('14')).toEqual([])
})

test('rounds that a habitat lacks are named', () => {
  const {design} = tinyResults({
    ...fourSites,
    visits: fourSites.visits!.filter(([trap, , , rest]) => {
      return !(trap.startsWith('w') && rest?.round === 'II')
    })
  })
  expect(design.unsharedRounds).toEqual(['II'])
  expect(numberOf(design.sharedRounds)).toBe(1)
  expect(design.supportsComparison).toBe(true)
})

test('distances are those between nearest sites, to the metre where all positions are public', () => {
  const {design} = tinyResults(fourSites)
  expect(numberOf(design.nearestWithin)).toBeCloseTo((1111.95 * 2 + 3335.85 * 2) / 4, 0)
  expect(numberOf(design.nearestBetween)).toBeCloseTo((2223.9 + 3335.85) / 2, 0)
  expect(numberOf(design.nearestAny.smallest)).toBeCloseTo(1111.95, 1)
  expect(numberOf(design.nearestAny.largest)).toBeCloseTo(3335.85, 1)
  expect(design.nearestWithin.label).not.toContain('100 m')
})

test('distances are given to the nearest 100 m where any position is not public, and say so', () => {
  const {design} = tinyResults({...fourSites, settings: {no_catch_rows: 'empty'}})
  expect(numberOf(design.nearestAny.smallest)).toBe(1100)
  expect(design.nearestAny.smallest.label).toBe(
    'Smallest distance of a site to its nearest one, to the nearest 100 m'
  )
})

test('sites without positions have no distances', () => {
  const {design} = tinyResults(twoPlaces)
  expect(numberOf(design.nearestWithin)).toBe('no habitat has two sites with a position on record')
  expect(numberOf(design.nearestAny.largest)).toBe('fewer than two sites have a position on record')
})
