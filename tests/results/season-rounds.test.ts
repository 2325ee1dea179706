import {expect, test} from 'vitest'
import type {Exposure} from '../../src/model/study.ts'
import {seasonRounds} from '../../src/results/season-rounds.ts'
import {moment} from './tiny-study.ts'

function exposure(opened: string | undefined, collected: string, round?: string): Exposure {
  return {
    row: 0,
    trapId: 'A1',
    ...(opened !== undefined && {opened: moment(opened)}),
    collected: moment(collected),
    condition: 'intact',
    ...(round !== undefined && {round})
  }
}

test('rounds keep the names of the round column, in the order of their collection', () => {
  const late = exposure('2026-05-18', '2026-06-01', 'early June')
  const early = exposure('2026-05-04', '2026-05-18', 'May')
  const rounds = seasonRounds([late, early], 'dates')
  expect(rounds.rounds.map(({id}) => id)).toEqual(['May', 'early June'])
  expect(rounds.ofExposure(late).id).toBe('early June')
})

test('without names a new round starts where a trap was opened on or after the earliest collection of the current one', () => {
  const staggered = [
    exposure('2026-05-04', '2026-05-18'),
    exposure('2026-05-05', '2026-05-19'),
    exposure('2026-05-18', '2026-06-01'),
    exposure('2026-05-19', '2026-06-02')
  ]
  const rounds = seasonRounds(staggered, 'dates')
  expect(staggered.map((each) => rounds.ofExposure(each).id)).toEqual(['1', '1', '2', '2'])
})

test('two exposures within one day are two rounds by the clock', () => {
  const day = exposure('2026-05-04T08:00', '2026-05-04T20:00')
  const other = exposure('2026-05-04T08:30', '2026-05-04T20:30')
  const night = exposure('2026-05-04T20:00', '2026-05-05T08:00')
  const rounds = seasonRounds([night, other, day], 'clock times')
  expect([day, other, night].map((each) => rounds.ofExposure(each).id)).toEqual(['1', '1', '2'])
})

test('an exposure without opening and round goes to the round that was running when it was collected', () => {
  const stray = exposure(undefined, '2026-05-20')
  const rounds = seasonRounds(
    [stray, exposure('2026-05-04', '2026-05-18', 'I'), exposure('2026-05-18', '2026-06-01', 'II')],
    'dates'
  )
  expect(rounds.ofExposure(stray).id).toBe('II')
  expect(rounds.rounds[1]?.lastCollected).toBe(moment('2026-06-01').day)
})

test('exposures that all lack an opening date are one round', () => {
  const strays = [exposure(undefined, '2026-05-20'), exposure(undefined, '2026-06-20')]
  expect(seasonRounds(strays, 'dates').rounds.map(({id}) => id)).toEqual(['1'])
})
