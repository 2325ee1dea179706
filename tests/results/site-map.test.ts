import {describe, expect, test} from 'vitest'
import type {SiteResult} from '../../src/model/results.ts'
import {siteMap} from '../../src/results/site-map.ts'
import {numberOf} from './tiny-study.ts'

type Position = SiteResult['position']

const rounded = (latitude: string, longitude: string, precision = '0.01'): Position => ({
  shown: 'rounded',
  latitude,
  longitude,
  precision
})
const exact = (latitude: string, longitude: string): Position => ({shown: 'exact', latitude, longitude})
const withheld: Position = {shown: 'withheld', because: 'it was decided so for this site'}
const unknown: Position = {shown: 'not recorded'}

const mapOf = (...positions: readonly Position[]) =>
  siteMap(positions.map((position, index) => ({id: `S${index + 1}`, position})))

test('places are metres from the south-western corner, the parallel in the middle true to scale', () => {
  // A hundredth of a degree of a sphere of 6,371,009 m is 1,112 m, and at 60 degrees half of that from west to east.
  expect(mapOf(rounded('60.00', '3.01'), rounded('60.00', '3.00')).sites).toEqual([
    {site: 'S1', eastM: 556, northM: 0, widthM: 556, heightM: 1112},
    {site: 'S2', eastM: 0, northM: 0, widthM: 556, heightM: 1112}
  ])
})

test('an exact position has no square about it, and sites on either side of longitude 180 are neighbours', () => {
  expect(mapOf(exact('0', '-179.999'), exact('0', '179.999')).sites).toEqual([
    {site: 'S1', eastM: 222, northM: 0},
    {site: 'S2', eastM: 0, northM: 0}
  ])
})

test('what is not on the map is counted by its reason', () => {
  const map = mapOf(exact('50', '3'), rounded('50.01', '3.00'), withheld, withheld, unknown)
  expect(map.sites.map(({site}) => site)).toEqual(['S1', 'S2'])
  expect([map.rounded, map.tooRough, map.keptBack, map.notRecorded].map(numberOf)).toEqual([1, 0, 2, 1])
})

test('a position rounded to more than the extent of all finer ones stands on no map of theirs', () => {
  const near = [rounded('50.00', '3.00'), rounded('50.01', '3.02')]
  const map = mapOf(...near, rounded('50.0', '3.0', '0.1'))
  expect(map.sites.map(({site}) => site)).toEqual(['S1', 'S2'])
  expect([map.rounded, map.tooRough].map(numberOf)).toEqual([2, 1])
  const wide = mapOf(...near, rounded('51.00', '4.00'), rounded('50.0', '3.0', '0.1'))
  expect(wide.sites).toHaveLength(4)
})

describe('there is no map', () => {
  test.each([
    ['the study has no site', []],
    ['the positions of the sites are not on record', [unknown, unknown]],
    ['there is only one site', [exact('50', '3')]],
    ['the positions of the sites are kept back', [withheld, withheld, unknown]],
    ['only one site has a position that may be shown', [rounded('50.00', '3.00'), withheld]],
    [
      'the positions, as exact as they may be shown, are all the same',
      [rounded('50.0', '3.0', '0.1'), rounded('50.0', '3.0', '0.1')]
    ]
  ] as const)('because %s', (why, positions) => {
    const map = mapOf(...positions)
    expect(map.whyNot).toBe(why)
    expect(map.sites).toEqual([])
  })
})
