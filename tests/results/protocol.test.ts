import {expect, test} from 'vitest'
import {numberOf, tinyResults, twoPlaces} from './tiny-study.ts'

test('intervals, rounds and traps at a site are as the records show them', () => {
  const {protocol} = tinyResults({
    ...twoPlaces,
    traps: {...twoPlaces.traps, W3: 'W'},
    visits: [...twoPlaces.visits!, ['W3', '2026-05-18', '2026-05-25', {sample: 'empty'}]]
  })
  expect(protocol).toMatchObject({
    firstOpened: '2026-05-04',
    lastCollected: '2026-06-01',
    pooled: false,
    sampleFractionUsed: false
  })
  expect(numberOf(protocol.intervalShortest)).toBe(7)
  expect(numberOf(protocol.intervalMedian)).toBe(14)
  expect(numberOf(protocol.intervalLongest)).toBe(14)
  expect(numberOf(protocol.roundsAchieved)).toBe(2)
  expect(numberOf(protocol.trapsPerSiteSmallest)).toBe(2)
  expect(numberOf(protocol.trapsPerSiteLargest)).toBe(3)
})

test('settling time runs from digging in to the first opening', () => {
  const {protocol} = tinyResults({
    ...twoPlaces,
    traps: {M1: 'M', M2: {siteId: 'M', installed: 20570}, W1: {siteId: 'W', installed: 20574}, W2: 'W'}
  })
  // 20570 is 2026-04-27.
  expect(numberOf(protocol.settlingLongest)).toBe(7)
  expect(numberOf(protocol.settlingShortest)).toBe(3)
  expect(numberOf(tinyResults(twoPlaces).protocol.settlingLongest)).toBe(
    'the day of digging in is not recorded'
  )
})

test('the only trap type and fluid declared are those of every trap that names none', () => {
  const {protocol} = tinyResults({
    ...twoPlaces,
    settings: {
      trap_types: {cup: {container: 'yoghurt cup'}},
      fluids: {glycol: {substance: 'propylene glycol', dilution: '1:2'}}
    }
  })
  expect(protocol.trapTypes.map(({id, traps, stated}) => [id, numberOf(traps), stated])).toEqual([
    ['cup', 4, {container: 'yoghurt cup'}]
  ])
  expect(protocol.fluids.map(({stated}) => stated)).toEqual([
    {substance: 'propylene glycol', dilution: '1:2'}
  ])
})

test('a fluid of a single exposure is in use', () => {
  const {protocol} = tinyResults({
    ...twoPlaces,
    visits: twoPlaces.visits!.map((each, index) =>
      index === 0 ? [each[0], each[1], each[2], {fluid: 'brine'}] : each
    )
  })
  expect(protocol.fluids.map(({id, traps}) => [id, numberOf(traps)])).toEqual([['brine', 1]])
})

test('each condition stands with its credit in words', () => {
  const {protocol} = tinyResults({
    ...twoPlaces,
    settings: {
      conditions: {trampled: {credit: 0.25, meaning: 'cattle trod on it'}, blocked: {credit: 'none'}}
    },
    visits: twoPlaces.visits!.map(([trap, opened, collected], index) => {
      const condition = ['dry', 'dry', 'trampled', 'blocked', 'missing'][index] ?? 'intact'
      return [trap, opened, collected, {condition, ...(index === 0 && {failedOn: {day: 20580}})}] as const
    })
  })
  expect(
    protocol.conditions.map(({condition, credit, exposures}) => [condition, credit, numberOf(exposures)])
  ).toEqual([
    ['intact', 'all nights', 3],
    [
      'dry',
      'half the nights where animals were recovered, or the nights until the failure where its day is known',
      2
    ],
    ['blocked', 'none', 1],
    ['missing', 'none', 1],
    ['trampled', '0.25 of the nights where animals were recovered', 1]
  ])
  expect(protocol.conditions.at(-1)!.meaning).toBe('cattle trod on it')
})
