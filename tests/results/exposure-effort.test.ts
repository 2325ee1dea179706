import {describe, expect, test} from 'vitest'
import type {Settings} from '../../src/model/settings.ts'
import type {Exposure} from '../../src/model/study.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

/** Net trap-nights of one exposure of 14 nights, and the individuals in and outside the rates. */
function outcome(rest: Partial<Exposure>, animals: number | undefined, settings: Settings = {}) {
  const {effort, catch: caught} = tinyResults({
    settings,
    sites: {A: 'wood'},
    traps: {A1: 'A'},
    visits: [['A1', '2026-06-14', '2026-06-28', rest]],
    catch: animals === undefined ? [] : [['A1', '2026-06-28', 'Abax ater', animals]]
  })
  return {
    net: numberOf(effort.net),
    unsorted: numberOf(effort.unsorted),
    inside: numberOf(caught.individuals),
    outside: numberOf(caught.outsideEffort)
  }
}

const failedOn = {day: 20623} // 2026-06-19

describe('credit of an exposure of 14 nights', () => {
  test.each([
    ['intact with animals earns all nights', {}, 3, 14, 3, 0],
    ['diluted with animals earns all nights', {condition: 'diluted'}, 3, 14, 3, 0],
    ['intact and said to be empty is a true zero', {sample: 'empty'}, undefined, 14, 0, 0],
    ['a row of no animals is a catch record too', {}, 0, 14, 0, 0],
    ['overflowed with animals earns half', {condition: 'overflowed'}, 3, 7, 3, 0],
    ['raised with animals earns half', {condition: 'raised'}, 3, 7, 3, 0],
    [
      'disturbed and empty earns nothing: it cannot show absence',
      {condition: 'disturbed', sample: 'empty'},
      undefined,
      0,
      0,
      0
    ],
    ['dry without any word on its sample earns nothing', {condition: 'dry'}, undefined, 0, 0, 0],
    ['blocked on a known day earns the nights until then', {condition: 'blocked', failedOn}, 3, 5, 3, 0],
    [
      'overflowed on a known day earns them also when empty',
      {condition: 'overflowed', failedOn, sample: 'empty'},
      undefined,
      5,
      0,
      0
    ],
    ['missing earns nothing, and its catch stays outside', {condition: 'missing'}, 3, 0, 0, 3],
    ['spilled earns nothing', {condition: 'spilled'}, undefined, 0, 0, 0],
    ['closed earns nothing, and its catch stays outside', {condition: 'closed'}, 3, 0, 0, 3],
    ['a lost sample earns nothing, and its catch stays outside', {sample: 'lost'}, 3, 0, 0, 3],
    ['called empty with animals is a contradiction: no effort, catch outside', {sample: 'empty'}, 3, 0, 0, 3],
    ['no catch record, no effort', {}, undefined, 0, 0, 0]
  ] as const)('%s', (_, rest, animals, net, inside, outside) => {
    expect(outcome(rest, animals)).toEqual({net, unsorted: 0, inside, outside})
  })

  test('a sample not sorted yet is left out of the net effort and listed as field effort', () => {
    expect(outcome({sample: 'unsorted'}, undefined)).toEqual({net: 0, unsorted: 14, inside: 0, outside: 0})
    expect(outcome({sample: 'unsorted', condition: 'dry'}, undefined).unsorted).toBe(7)
    expect(outcome({sample: 'unsorted', condition: 'missing'}, undefined).unsorted).toBe(0)
  })

  test('what silence means can be said once', () => {
    expect(outcome({}, undefined, {no_catch_rows: 'empty'}).net).toBe(14)
    expect(outcome({}, undefined, {no_catch_rows: 'unsorted'}).unsorted).toBe(14)
    expect(outcome({}, undefined, {no_catch_rows: 'lost'}).net).toBe(0)
  })

  test('a study can set other credits and add words of its own', () => {
    expect(outcome({condition: 'overflowed'}, 3, {conditions: {overflowed: {credit: 'full'}}}).net).toBe(14)
    expect(outcome({condition: 'overflowed'}, 3, {conditions: {overflowed: {credit: 'none'}}})).toEqual({
      net: 0,
      unsorted: 0,
      inside: 0,
      outside: 3
    })
    expect(outcome({condition: 'trampled'}, 3, {conditions: {trampled: {credit: 0.25}}}).net).toBe(3.5)
    expect(
      outcome({condition: 'trampled', sample: 'empty'}, undefined, {conditions: {trampled: {credit: 0.25}}})
        .net
    ).toBe(0)
  })

  test('a failure dated before the opening earns nothing, one after the collection no more than the interval', () => {
    expect(outcome({condition: 'dry', failedOn: {day: 20000}}, 3).net).toBe(0)
    expect(outcome({condition: 'dry', failedOn: {day: 30000}}, 3).net).toBe(14)
  })
})

test('catch of an exposure without an opening date stays outside the effort', () => {
  const {effort, catch: caught} = tinyResults({
    sites: {A: 'wood'},
    traps: {A1: 'A'},
    visits: [['A1', '', '2026-06-28']],
    catch: [['A1', '2026-06-28', 'Abax ater', 3]]
  })
  expect(numberOf(effort.net)).toBe(0)
  expect(numberOf(caught.outsideEffort)).toBe(3)
  expect(numberOf(caught.rate)).toBe('no trap-nights count here')
})
