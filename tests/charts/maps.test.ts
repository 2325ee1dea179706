import {describe, expect, test} from 'vitest'
import type {Figure} from '../../src/charts/chart.ts'
import {lengthWords, roundLength} from '../../src/charts/map-furniture.ts'
import {siteMap} from '../../src/charts/site-map.ts'
import {spreadSymbols} from '../../src/charts/spread-symbols.ts'
import {trapLayout} from '../../src/charts/trap-layout.ts'
import type {Results} from '../../src/model/results.ts'
import {manyHabitats, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf(threeHabitats)
const mapOf = (of: Results): Figure | undefined => siteMap.figures(of)[0]
const map = mapOf(results)

/** Symbols of sites or traps: what has a place, a colour and a shape; the key has no x of its own. */
const symbolsOf = (figure: Figure | undefined) =>
  specValues(figure).filter(({x, shape}) => x !== undefined && shape !== undefined)

describe('the map of the sites', () => {
  test('shows every site that may be shown, named, in the colour and shape of its habitat', () => {
    expect(symbolsOf(map)).toHaveLength(results.map.sites.length)
    expect(new Set(symbolsOf(map).map(({colour, shape}) => `${colour} ${shape}`)).size).toBe(3)
    expect(specTexts(map)).toContain('Oak wood 1')
    expect(specTexts(map)).not.toContain('Oak wood 4')
  })

  test('has the same scale on both axes, and a bar as long as it says', () => {
    const [first, second] = results.map.sites
    const [one, other] = symbolsOf(map)
    const perPixelEast = (second!.eastM - first!.eastM) / (Number(other?.x) - Number(one?.x))
    const perPixelNorth = (second!.northM - first!.northM) / (Number(one?.y) - Number(other?.y))
    expect(perPixelNorth / perPixelEast).toBeCloseTo(1, 6)
    const bar = specValues(map).find(({y, y2, x2}) => y === y2 && x2 !== undefined)
    expect((Number(bar?.x2) - Number(bar?.x)) * perPixelEast).toBeCloseTo(2000, 6)
    expect(specTexts(map)).toContain('2 km')
    expect(specTexts(map)).toContain('N')
  })

  test('draws the square of a rounded position, and none about an exact one', () => {
    const boxes = specValues(map).filter(({x, x2, y, y2}) => x2 !== undefined && x !== x2 && y !== y2)
    // Six sites of the fixture are rounded, each in a square of its own; one box is the edge of the map.
    expect(boxes).toHaveLength(6 + 1)
  })

  test('its data hold the positions as they are published', () => {
    expect(column(map, 'latitude').slice(0, 3)).toEqual(['51.20', '51.21', '51.2237'])
    expect(column(map, 'precision_degrees').slice(0, 3)).toEqual(['0.01', '0.01', null])
    expect(map?.alternative).toContain('Oak wood 2 (51.21, 9.12)')
    expect(map?.alternative).toContain('Not on the map: 2 sites whose position is kept back.')
  })

  test.each([3, 12])(
    'with %d habitats no symbol covers another, and names left out are counted',
    (howMany) => {
      const many = mapOf(resultsOf(manyHabitats(howMany)))
      const places = symbolsOf(many)
      for (const [index, one] of places.entries()) {
        for (const other of places.slice(index + 1))
          expect(
            Math.hypot(Number(one.x) - Number(other.x), Number(one.y) - Number(other.y))
          ).toBeGreaterThan(13)
      }
      if (howMany === 12)
        expect(
          specTexts(many).filter((text) => /^Without a name, for want of room: \d+ of the 36/.test(text))
        ).toHaveLength(1)
    }
  )

  test('is not drawn where nothing can be shown, and says why', () => {
    const none = mapOf(resultsOf(threeHabitats.map((plan) => ({...plan, siteRates: []}))))
    expect([none?.spec, none?.notDrawn]).toEqual([undefined, 'the study has no site'])
    expect(none?.alternative).toBe('There is no map, because the study has no site.')
    expect(none?.data.rows).toEqual([])
  })
})

describe('the drawing of the traps of a site', () => {
  const [oak, ...others] = trapLayout.figures(results)

  test('is one for each site, named after it, and shows nothing of the others', () => {
    expect(others).toHaveLength(results.sites.length - 1)
    expect(oak?.name).toBe('trap-layout-oak-1')
    for (const word of ['Hay', 'meadow', 'oak-2']) expect(JSON.stringify(oak)).not.toContain(word)
  })

  test('names each trap without what all of them share, and its data have the whole name', () => {
    expect(specTexts(oak)).toEqual(expect.arrayContaining(['1', '2', '3', '4', '5', 'N', '10 m']))
    expect(column(oak, 'trap_id')).toEqual(['oak-1-1', 'oak-1-2', 'oak-1-3', 'oak-1-4', 'oak-1-5'])
    expect(oak?.alternative).toContain('4 at 30 and 0 and 5 at 40 and 0.')
  })

  test('keeps whole names where cutting them would leave two alike or one empty', () => {
    const withTraps = (ids: readonly string[]): Results => {
      const [site] = results.sites
      const traps = ids.map((id, index) => ({id, eastM: index * 10, northM: 0}))
      return {...results, sites: [{...site!, layout: {...site!.layout, traps}}]}
    }
    const named = (ids: readonly string[]) => specTexts(trapLayout.figures(withTraps(ids))[0])
    expect(named(['oak-1', 'oak-1-2'])).toEqual(expect.arrayContaining(['oak-1', 'oak-1-2']))
    expect(named(['oak-1-2', 'oak-1_2'])).toEqual(expect.arrayContaining(['oak-1-2', 'oak-1_2']))
    expect(named(['A', 'oak-1-2'])).toEqual(expect.arrayContaining(['A', 'oak-1-2']))
  })

  test('says why there is none', () => {
    const [site] = results.sites
    const layout = {...site!.layout, traps: [], whyNot: 'there was only one trap'}
    const [none] = trapLayout.figures({...results, sites: [{...site!, layout}]})
    expect([none?.spec, none?.notDrawn]).toEqual([undefined, 'there was only one trap'])
  })
})

test('symbols of one place stand in a column about it, and others keep theirs', () => {
  const [one, two, alone] = spreadSymbols([
    {x: 50, y: 50},
    {x: 50, y: 50},
    {x: 90, y: 20}
  ])
  expect([one?.x, two?.x, alone]).toEqual([50, 50, {x: 90, y: 20}])
  expect((one!.y + two!.y) / 2).toBe(50)
})

test.each([
  [0.7, '0.5 m'],
  [9.9, '5 m'],
  [10, '10 m'],
  [430, '200 m'],
  [1999, '1 km'],
  [73_000, '50 km']
])('the bar on a map with room for %d m is %s', (room, words) => {
  expect(lengthWords(roundLength(room))).toBe(words)
})
