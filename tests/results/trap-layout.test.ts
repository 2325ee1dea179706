import {describe, expect, test} from 'vitest'
import type {SiteResult} from '../../src/model/results.ts'
import type {Site, Trap} from '../../src/model/study.ts'
import {pictureNames} from '../../src/results/picture-names.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

function layoutOf(site: Partial<Site>, traps: readonly Partial<Trap>[]): SiteResult['layout'] {
  const ids = traps.map((_, index) => `T${index + 1}`)
  const {sites} = tinyResults({
    sites: {A: {habitat: 'wood', ...site}},
    traps: Object.fromEntries(ids.map((id, index) => [id, {siteId: 'A', ...traps[index]}])),
    visits: ids.map((id) => [id, '2025-05-01', '2025-05-15', {sample: 'empty'}] as const)
  })
  return sites[0]!.layout
}

const exactly = {latitude: 60, longitude: 3, coordinatesShown: 'exact'} as const
const coordinates = [
  {latitude: 60, longitude: 3},
  {latitude: 60.001, longitude: 3.002}
]

test('metres paced at the site become metres from the south-western trap corner, wherever the site lies', () => {
  const {traps, whyNot} = layoutOf({...exactly, coordinatesShown: 'none'}, [
    {xM: 432_010.5, yM: 6_651_000},
    {xM: 432_000, yM: 6_651_020.25}
  ])
  expect(whyNot).toBeUndefined()
  expect(traps).toEqual([
    {id: 'T1', eastM: 10.5, northM: 0},
    {id: 'T2', eastM: 0, northM: 20.3}
  ])
})

test('coordinates of traps serve where the position of their site may be shown exactly', () => {
  const {traps} = layoutOf(exactly, coordinates)
  // 0.001 degrees are 111.2 m, and at 60 degrees half of that from west to east.
  expect(traps).toEqual([
    {id: 'T1', eastM: 0, northM: 0},
    {id: 'T2', eastM: 111.2, northM: 111.2}
  ])
})

test('traps without a place are counted', () => {
  const layout = layoutOf({}, [{xM: 0, yM: 0}, {xM: 5, yM: 5}, {xM: 9}])
  expect(layout.traps).toHaveLength(2)
  expect(numberOf(layout.notPlaced)).toBe(1)
})

describe('nothing is drawn', () => {
  test.each([
    ['there was only one trap', {}, [{xM: 0, yM: 0}]],
    ['the place of each trap is not written down', exactly, [{}, {}]],
    [
      'all traps have the same place on record',
      {},
      [
        {xM: 3, yM: 3},
        {xM: 3, yM: 3.01}
      ]
    ],
    ...(['none', '0.1', '0.01', '0.001'] as const).map(
      (coordinatesShown) =>
        [
          'the places of the traps are known only on a map of the country, and the place of this site is not shown exactly',
          {...exactly, coordinatesShown},
          coordinates
        ] as const
    )
  ] as const)('because %s', (why, site, traps) => {
    const layout = layoutOf(site, traps)
    expect(layout.whyNot).toBe(why)
    expect(layout.traps).toEqual([])
  })
})

test('each site has a name for its picture that can stand in a file name and an id, whatever its own', () => {
  const names = pictureNames(['OAK1', 'oak1', 'Site 1', 'Site_20_1', 'Wölk', '../x', 'a/b'])
  expect(names.get('OAK1')).toBe('OAK1')
  const all = [...names.values()]
  for (const name of all) expect(name).toMatch(/^[\w-]+$/)
  expect(new Set(all.map((name) => name.toLowerCase())).size).toBe(all.length)
})
