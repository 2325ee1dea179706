import {expect, test} from 'vitest'
import {moment, numberOf, tinyResults, twoPlaces} from './tiny-study.ts'

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

test('who identified and checked, vouchers, digging in and positions are told from the records', () => {
  const {protocol} = tinyResults({
    sites: {
      s1: {habitat: 'wood', coordinateUncertaintyM: 50},
      s2: {habitat: 'wood', coordinateUncertaintyM: 100}
    },
    traps: {
      a: {siteId: 's1', installed: moment('2026-04-07').day},
      b: {siteId: 's2', installed: moment('2026-04-09').day}
    },
    visits: [
      ['a', '2026-05-01', '2026-05-08'],
      ['b', '2026-05-01', '2026-05-08', {condition: 'missing'}]
    ],
    catch: [
      ['a', '2026-05-08', 'Abax ater', 2, {identifiedBy: 'B', verifiedBy: 'C', voucher: '7'}],
      ['a', '2026-05-08', 'Abax ovalis', 1, {identifiedBy: 'A'}],
      ['a', '2026-05-08', 'Carabus problematicus', 0]
    ]
  })
  expect(protocol).toMatchObject({firstInstalled: '2026-04-07', lastInstalled: '2026-04-09'})
  expect(numberOf(protocol.positionUncertainty)).toBe(100)
  expect(numberOf(protocol.catchRecords)).toBe(2)
  expect(protocol.identifiedBy.map(({who, records}) => [who, numberOf(records)])).toEqual([
    ['A', 1],
    ['B', 1]
  ])
  expect(protocol.verifiedBy.map(({who}) => who)).toEqual(['C'])
  expect([numberOf(protocol.verifiedRecords), numberOf(protocol.voucherRecords)]).toEqual([1, 1])
  expect(protocol.lostExposures).toMatchObject([
    {site: 's2', trap: 'b', condition: 'missing', collected: '2026-05-08'}
  ])
})

test('the uncertainty of positions is not defined where one site states none', () => {
  const {protocol} = tinyResults({
    sites: {s1: {habitat: 'wood', coordinateUncertaintyM: 50}, s2: 'wood'},
    traps: {a: 's1'}
  })
  expect(protocol.positionUncertainty).toMatchObject({
    notDefined: 'the uncertainty of the coordinates is not recorded for every site'
  })
})
