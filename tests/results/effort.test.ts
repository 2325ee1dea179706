import fc from 'fast-check'
import {expect, test} from 'vitest'
import {type ConditionWord, conditionWords} from '../../src/model/column-words.ts'
import {isDefined} from '../../src/model/quantity.ts'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

const visit = fc.record({
  trap: fc.constantFrom('M1', 'M2', 'W1', 'W2'),
  round: fc.integer({min: 0, max: 3}),
  nights: fc.integer({min: 1, max: 14}),
  condition: fc.constantFrom(...conditionWords),
  animals: fc.integer({min: 0, max: 4}),
  sample: fc.constantFrom(undefined, 'empty', 'unsorted', 'lost'),
  fraction: fc.constantFrom(1, 0.5, 0.3)
})

/** A season with at most one exposure of each trap in each round of 14 days. */
const season = fc
  .uniqueArray(visit, {minLength: 1, maxLength: 12, selector: ({trap, round}) => `${trap} ${round}`})
  .map((visits): Tiny => {
    const dated = visits.map((each) => {
      const opened = `2026-0${5 + Math.floor(each.round / 2)}-${each.round % 2 === 0 ? '01' : '15'}`
      const day = (each.round % 2 === 0 ? 1 : 15) + each.nights
      return {...each, opened, collected: `${opened.slice(0, 8)}${`${day}`.padStart(2, '0')}`}
    })
    return {
      ...twoPlaces,
      visits: dated.map(({trap, opened, collected, condition, sample}) => {
        return [trap, opened, collected, {condition, ...(sample !== undefined && {sample})}] as const
      }),
      catch: dated
        .filter(({animals}) => animals > 0)
        .map(({trap, collected, animals, fraction}) => {
          return [trap, collected, 'Abax ater', animals, {sampleFraction: fraction}] as const
        })
    }
  })

const parts = ['exposures', 'planned', 'exposed', 'net', 'unsorted', 'lost'] as const
const counts = ['individuals', 'outsideEffort', 'total'] as const

test('effort and catch add up over traps, sites, habitats and rounds', () => {
  fc.assert(
    fc.property(season, (tiny) => {
      const results = tinyResults(tiny)
      const sum = (values: readonly (number | string)[]) =>
        values.reduce<number>((total, value) => total + Number(value), 0)
      for (const part of parts) {
        const whole = numberOf(results.effort[part])
        for (const group of [results.traps, results.sites, results.habitats, results.rounds]) {
          expect(sum(group.map(({effort}) => numberOf(effort[part])))).toBeCloseTo(Number(whole), 9)
        }
      }
      for (const part of counts) {
        const whole = numberOf(results.catch[part])
        for (const group of [results.traps, results.sites, results.habitats, results.rounds]) {
          expect(sum(group.map(({catch: caught}) => numberOf(caught[part])))).toBe(whole)
        }
      }
    }),
    {numRuns: 60}
  )
})

/** Share of an interval credited to a condition where its animals were recovered. */
const credits: Readonly<Record<ConditionWord, number>> = {
  intact: 1,
  diluted: 1,
  overflowed: 0.5,
  dry: 0.5,
  raised: 0.5,
  disturbed: 0.5,
  blocked: 0.5,
  spilled: 0,
  missing: 0,
  closed: 0
}

test('moving a collection by a day changes effort by exactly one night times its credit', () => {
  const moved = fc.record({
    condition: fc.constantFrom(...conditionWords),
    animals: fc.integer({min: 0, max: 4}),
    opened: fc.integer({min: 1, max: 9}),
    nights: fc.integer({min: 1, max: 19}),
    fraction: fc.constantFrom(1, 0.5, 0.3)
  })
  const dayOfMonth = (day: number) => `2026-07-${`${day}`.padStart(2, '0')}`
  fc.assert(
    fc.property(season, moved, (tiny, {condition, animals, opened, nights, fraction}) => {
      // A trap of its own, so that no other exposure of it begins on that day.
      const net = (collected: string) =>
        Number(
          numberOf(
            tinyResults({
              ...tiny,
              traps: {...tiny.traps, W9: 'W'},
              visits: [...tiny.visits!, ['W9', dayOfMonth(opened), collected, {condition}]],
              catch: [...tiny.catch!, ['W9', collected, 'Abax ater', animals, {sampleFraction: fraction}]]
            }).effort.net
          )
        )
      const last = opened + nights
      // A failed trap without animals cannot show absence, whatever its interval.
      const credit = animals === 0 && credits[condition] < 1 ? 0 : credits[condition]
      expect(net(dayOfMonth(last + 1)) - net(dayOfMonth(last))).toBeCloseTo(credit, 9)
    }),
    {numRuns: 60}
  )
})

test('planned nights follow the protocol where it states rounds and interval', () => {
  const {effort, rounds} = tinyResults({...twoPlaces, settings: {protocol: {rounds: 3, interval_nights: 14}}})
  expect(numberOf(effort.planned)).toBe(4 * 3 * 14)
  expect(numberOf(effort.lost)).toBe(56)
  expect(numberOf(rounds[0]!.effort.planned)).toBe(4 * 14)
})

test('more nights than planned are a negative loss, as they are', () => {
  const {effort} = tinyResults({...twoPlaces, settings: {protocol: {rounds: 1, interval_nights: 14}}})
  expect(numberOf(effort.lost)).toBe(-56)
})

test('without a protocol a trap absent from a round is expected for the median exposure of that round', () => {
  const {effort, traps} = tinyResults({
    ...twoPlaces,
    visits: twoPlaces.visits!.filter((_, index) => index !== 7)
  })
  expect(numberOf(effort.planned)).toBe(8 * 14)
  expect(numberOf(effort.lost)).toBe(14)
  expect(numberOf(traps[3]!.effort.shareLost)).toBe(0.5)
})

test('a trap closed on purpose was not meant to catch in that round', () => {
  const visits = twoPlaces.visits!.map((each, index) => {
    return index === 7 ? (['W2', '2026-05-18', '2026-06-01', {condition: 'closed'}] as const) : each
  })
  const {effort} = tinyResults({...twoPlaces, visits})
  expect(numberOf(effort.planned)).toBe(7 * 14)
  expect(numberOf(effort.exposed)).toBe(7 * 14)
  expect(numberOf(effort.lost)).toBe(0)
})

test('a second record of a trap without an opening date plans nothing', () => {
  const {effort} = tinyResults({...twoPlaces, visits: [...twoPlaces.visits!, ['W2', '', '2026-05-20']]})
  expect(numberOf(effort.exposures)).toBe(9)
  expect(numberOf(effort.planned)).toBe(8 * 14)
})

test('a study without any exposure has no share lost', () => {
  const {effort} = tinyResults({sites: {A: 'wood'}, traps: {A1: 'A'}})
  expect(isDefined(effort.shareLost)).toBe(false)
})
