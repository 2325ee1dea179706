import {expect, test} from 'vitest'
import {dayOf} from '../../src/model/day.ts'
import {checkedResults, numberOf, tinyResults, tinyStudy, twoPlaces} from './tiny-study.ts'

/** Days of May 2026 with rain and temperatures, before, during and after the trapping. */
function withWeather(
  days: readonly (readonly [day: number, rain?: number | undefined, coldest?: number, warmest?: number])[]
) {
  const usable = tinyStudy({
    ...twoPlaces,
    visits: [
      ['M1', '2026-05-04', '2026-05-06', {round: 'I'}],
      ['M1', '2026-05-06', '2026-05-09', {round: 'II'}]
    ]
  })
  const weather = days.map(([day, rainMm, tempMinC, tempMaxC], row) => ({
    row,
    day: dayOf(2026, 5, day)!,
    ...(rainMm !== undefined && {rainMm}),
    ...(tempMinC !== undefined && {tempMinC}),
    ...(tempMaxC !== undefined && {tempMaxC})
  }))
  return checkedResults({...usable, study: {...usable.study, weather}}).weather
}

test('weather is summed over the days of each round, the day of a visit counting once', () => {
  const weather = withWeather([
    [3, 50, -9, 40],
    [4, 1, 2, 10],
    [5, 2, -0.5, 12],
    [6, 4, 3, 9],
    [7, 8, 5, 14],
    [8, 16, 6, 11],
    [9, 99, -20, 50]
  ])!
  expect(
    [weather.days, weather.daysOfTrapping, weather.rain, weather.coldest, weather.warmest].map(numberOf)
  ).toEqual([5, 5, 31, -0.5, 14])
  expect(weather.rounds.map(({id, days, rain}) => [id, numberOf(days), numberOf(rain)])).toEqual([
    ['I', 2, 3],
    ['II', 3, 28]
  ])
})

test('days without a value are told, and what was never measured is not defined', () => {
  const weather = withWeather([[4, 1], [5, undefined, 2], [6]])!
  expect([weather.days, weather.rain].map(numberOf)).toEqual([2, 1])
  expect(weather.rain).toMatchObject({caution: 'on record for 1 of 2 days'})
  expect(weather.warmest).toMatchObject({notDefined: 'it is not on record'})
})

test('without a day on record while traps were open, nothing is said of the weather', () => {
  expect(withWeather([[3, 50]])).toBeUndefined()
  expect(tinyResults(twoPlaces).weather).toBeUndefined()
})
