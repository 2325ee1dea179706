import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {siteMap} from '../src/charts/site-map.ts'
import {trapLayout} from '../src/charts/trap-layout.ts'
import {readAssets} from '../src/files/read-assets.ts'
import type {Outputs} from '../src/model/source.ts'
import type {CoordinatesShown} from '../src/model/study.ts'
import {buildReport} from '../src/pipeline.ts'
import {writtenStudy} from './language/written-study.ts'
import {memorySource} from './memory-source.ts'
import {tinyResults} from './results/tiny-study.ts'

/** Where a site really lies, as parts of the square of 0.01 degrees within which it is published. */
interface Hidden {
  readonly north: number
  readonly east: number
  /** Of the grid in which the places of its traps were measured. */
  readonly gridEast: number
  readonly gridNorth: number
}

const levels: readonly CoordinatesShown[] = ['none', '0.1', '0.01', '0.01']

function mapsOf(hidden: readonly Hidden[]) {
  const names = hidden.map((_, index) => `S${index + 1}`)
  const results = tinyResults({
    sites: Object.fromEntries(
      hidden.map(({north, east}, index) => [
        names[index],
        {
          habitat: index % 2 === 0 ? 'wood' : 'meadow',
          latitude: 51.2 + 0.02 * index + 0.0049 * north,
          longitude: 9.1 + 0.02 * index + 0.0049 * east,
          coordinatesShown: levels[index % levels.length]!
        }
      ])
    ),
    traps: Object.fromEntries(
      hidden.flatMap(({north, east, gridEast, gridNorth}, index) =>
        [1, 2].map((trap) => [
          `${names[index]}-${trap}`,
          {
            siteId: names[index]!,
            latitude: 51.2 + 0.02 * index + 0.0049 * north + 0.0001 * trap,
            longitude: 9.1 + 0.02 * index + 0.0049 * east,
            // Half of the sites have their traps in metres too.
            ...(index % 2 === 0 && {xM: gridEast + 10 * trap, yM: gridNorth})
          }
        ])
      )
    ),
    visits: names.flatMap((site) =>
      [1, 2].map((trap) => [`${site}-${trap}`, '2025-05-01', '2025-05-15', {sample: 'empty'}] as const)
    )
  })
  return {
    figures: [...siteMap.figures(results), ...trapLayout.figures(results)],
    map: results.map,
    layouts: results.sites.map(({layout}) => layout)
  }
}

describe('what is not shown of a position makes no difference to a map', () => {
  test('neither within the square of a rounded position nor anywhere for one that is held back', () => {
    const part = fc.double({min: -1, max: 1, noNaN: true})
    const metres = fc.integer({min: -9_000_000, max: 9_000_000})
    const site = fc.record({north: part, east: part, gridEast: metres, gridNorth: metres})
    const same = mapsOf(Array.from({length: 4}, () => ({north: 0, east: 0, gridEast: 0, gridNorth: 0})))
    expect(same.map.sites).toHaveLength(2)
    expect(same.layouts.filter(({traps}) => traps.length === 2)).toHaveLength(2)
    fc.assert(
      fc.property(fc.array(site, {minLength: 4, maxLength: 4}), (hidden) => {
        expect(mapsOf(hidden)).toEqual(same)
      })
    )
  })
})

describe('a report on sites whose positions are held back or rounded', () => {
  const sites = {A1: 'wood', A2: 'wood', B1: 'meadow', B2: 'meadow'}
  const shown = ['none', '0.01', '0.01', 'none']
  /** Exact positions, whose last digits are to be found nowhere; `shift` moves them within what is published. */
  const positions = (shift: number) =>
    ['', '', '', ''].map((_, index) => ({
      latitude: (51.30001 + index / 50 + (shift + 0.1) * 0.0031).toFixed(5),
      longitude: (9.40001 + index / 50 + (shift + 0.1) * 0.0027).toFixed(5)
    }))
  const build = async (shift: number): Promise<Outputs> => {
    const at = positions(shift)
    const files = writtenStudy({
      sites,
      siteCells: (_, index) => ({
        ...at[index]!,
        coordinates_shown: shown[index]!,
        owner: `Farm ${index + 1}`
      }),
      trapCells: (trap) => {
        const {latitude, longitude} = at[Object.keys(sites).findIndex((site) => trap.startsWith(site))]!
        return {latitude, longitude: trap.endsWith('1') ? longitude : (Number(longitude) + 0.0002).toFixed(5)}
      }
    })
    const report = await buildReport(memorySource(files), await readAssets())
    if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
    return report.outputs
  }

  test('holds them in no file, tells what is not on the map, and draws no traps from coordinates', async () => {
    const outputs = await build(0)
    for (const {latitude, longitude} of positions(0)) {
      const told = [...outputs].filter(([, content]) =>
        [latitude, longitude].some((secret) => Buffer.from(content).includes(secret))
      )
      expect(told.map(([name]) => name)).toEqual([])
    }
    const front = String(outputs.get('index.html'))
    expect(front).toContain('Not on the map are two sites whose position is kept back.')
    const onMap = String(outputs.get('figures/site-map.csv'))
    expect(onMap).toMatch(/^site_id,/)
    expect(onMap).not.toMatch(/A1|B2/)
    expect(String(outputs.get('site-A2.md'))).toContain('We have no drawing of how the traps stood, because')
    expect(outputs.has('figures/trap-layout-A2.svg')).toBe(false)
  })

  test('has the same maps, front page and site reports when they are moved within what is published', async () => {
    const [one, other] = [await build(0), await build(0.9)]
    const looked = [...one.keys()].filter((name) => /^(index|site-.*)\.(html|md)$|^figures\//.test(name))
    expect(looked.length).toBeGreaterThan(20)
    expect([...other.keys()]).toEqual([...one.keys()])
    expect(looked.filter((name) => String(one.get(name)) !== String(other.get(name)))).toEqual([])
  })

  test('names no other site in the report of one', async () => {
    const outputs = await build(0)
    for (const site of Object.keys(sites)) {
      const others = Object.keys(sites).filter((other) => other !== site)
      const files = [`site-${site}.md`, `figures/trap-layout-${site}.csv`]
      expect(files.filter((file) => !outputs.has(file))).toEqual([])
      const text = files.map((file) => String(outputs.get(file))).join('')
      for (const other of others) expect(text).not.toContain(other)
      for (const [index, other] of Object.keys(sites).entries())
        if (other !== site) expect(text).not.toContain(`Farm ${index + 1}`)
    }
  })
})
