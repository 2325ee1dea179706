import {expect, test} from 'vitest'
import {numberOf, type Tiny, tinyResults} from './tiny-study.ts'

function nights(...visits: readonly (readonly [opened: string, collected: string])[]) {
  const traps = visits.map((_, index) => `A${index}`)
  const tiny: Tiny = {
    sites: {A: 'wood'},
    traps: Object.fromEntries(traps.map((trap) => [trap, 'A'])),
    visits: visits.map(([opened, collected], index) => [traps[index]!, opened, collected, {sample: 'empty'}])
  }
  const {effort, protocol} = tinyResults(tiny)
  return {exposed: numberOf(effort.exposed), from: protocol.nightsFrom, mixed: protocol.mixedTimes}
}

test('14 June to 28 June is 14 nights', () => {
  expect(nights(['2026-06-14', '2026-06-28'])).toEqual({exposed: 14, from: 'dates', mixed: false})
})

test('nights are decimal days where every exposure has clock times', () => {
  expect(nights(['2026-06-14T12:00', '2026-06-15T18:00'], ['2026-06-14T08:00', '2026-06-15T08:00'])).toEqual({
    exposed: 2.25,
    from: 'clock times',
    mixed: false
  })
})

test('one exposure without a time makes the whole study count from dates, and that is said', () => {
  expect(nights(['2026-06-14T12:00', '2026-06-15T18:00'], ['2026-06-14', '2026-06-15'])).toEqual({
    exposed: 2,
    from: 'dates',
    mixed: true
  })
})

test('an exposure without an opening date does not decide how nights are counted', () => {
  expect(nights(['2026-06-14T12:00', '2026-06-15T12:00'], ['', '2026-06-15']).from).toBe('clock times')
})

test('times with offset are elapsed time: a day over the spring change has 23 hours', () => {
  const {effort} = tinyResults({
    sites: {A: 'wood'},
    traps: {A1: 'A'},
    visits: [
      [
        'A1',
        '2026-03-27',
        '2026-03-30',
        {
          opened: {day: 20539, minutes: 720, offsetMinutes: 60},
          collected: {day: 20542, minutes: 720, offsetMinutes: 120},
          sample: 'empty'
        }
      ]
    ]
  })
  expect(numberOf(effort.net)).toBeCloseTo(2.958333, 6)
})
