import {expect, test} from 'vitest'
import {tinyResults, twoPlaces} from './tiny-study.ts'

test('the checklist has 26 items, and what is not recorded is not papered over', () => {
  const {checklist} = tinyResults(twoPlaces)
  const status = Object.fromEntries(checklist.map((item) => [item.id, item.status]))
  expect(checklist).toHaveLength(26)
  expect(new Set(checklist.map(({id}) => id)).size).toBe(26)
  expect(status).toMatchObject({
    target: 'partly',
    replicate: 'reported',
    dates: 'reported',
    permits: 'not recorded',
    funnel: 'not recorded'
  })
})

test('an item is reported where all that it asks for is on record, for every trap type in use', () => {
  const details = (types: Record<string, {funnel?: boolean}>) => {
    const {checklist} = tinyResults({
      ...twoPlaces,
      settings: {trap_types: types},
      traps: {
        M1: {siteId: 'M', trapType: 'cup'},
        M2: {siteId: 'M', trapType: 'cup'},
        W1: {siteId: 'W', trapType: 'jar'},
        W2: {siteId: 'W', trapType: 'jar'}
      }
    })
    return checklist.find(({id}) => id === 'funnel')!.status
  }
  expect(details({cup: {funnel: false}, jar: {}})).toBe('not recorded')
  expect(details({cup: {funnel: false}, jar: {funnel: true}})).toBe('reported')
})

test('an item reported in part says what is missing', () => {
  const {checklist} = tinyResults({
    ...twoPlaces,
    settings: {fluids: {glycol: {substance: 'propylene glycol', dilution: '1:1'}}}
  })
  expect(checklist.find(({id}) => id === 'fluid')).toMatchObject({
    status: 'partly',
    detail:
      'on record: substance, dilution; not on record: volume, detergent or none, bittering agent or none, bait or none'
  })
})
