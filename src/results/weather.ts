import type {Measure} from '../model/quantity.ts'
import type {WeatherResult} from '../model/results.ts'
import type {WeatherDay} from '../model/study.ts'
import type {Analysis} from './analysis.ts'
import {counted, words} from './counted.ts'

/**
 * Rain and temperature while traps were open; nothing where no day of it is on record. A day belongs to a round from
 * its first opening to the day before its last collection, so that the day of a visit is not told twice.
 */
export function weatherResult({study: {weather}, rounds: {rounds}}: Analysis): WeatherResult | undefined {
  const opened = rounds.flatMap(({firstOpened}) => (firstOpened === undefined ? [] : [firstOpened]))
  const first = Math.min(...opened)
  const last = Math.max(...rounds.map(({lastCollected}) => lastCollected))
  const within = between(weather, first, last)
  if (within.length === 0) return undefined
  return {
    ...weatherOf(within, 'whole study'),
    daysOfTrapping: counted('Days of trapping', last - first, words.days),
    rounds: rounds.map(({id, firstOpened, lastCollected}) => ({
      id,
      ...weatherOf(firstOpened === undefined ? [] : between(weather, firstOpened, lastCollected), id)
    }))
  }
}

function between(weather: readonly WeatherDay[], first: number, last: number): readonly WeatherDay[] {
  return weather.filter(({day, rainMm, tempMinC, tempMaxC}) => {
    return day >= first && day < last && (rainMm ?? tempMinC ?? tempMaxC) !== undefined
  })
}

function weatherOf(
  days: readonly WeatherDay[],
  where: string
): Omit<WeatherResult, 'daysOfTrapping' | 'rounds'> {
  const told = (
    label: string,
    key: 'rainMm' | 'tempMinC' | 'tempMaxC',
    unit: string,
    sum: (values: readonly number[]) => number
  ): Measure => {
    const values = days.flatMap((day) => day[key] ?? [])
    const head = {label: `${label}, ${where}`, kind: 'number', unit: [unit, unit]} as const
    if (values.length === 0) return {...head, notDefined: 'it is not on record'}
    const caution = `on record for ${values.length} of ${days.length} days`
    return {...head, value: sum(values), ...(values.length < days.length && {caution})}
  }
  return {
    days: counted(`Days on record, ${where}`, days.length, words.days),
    rain: told('Rain', 'rainMm', 'mm', (values) => values.reduce((sum, value) => sum + value, 0)),
    coldest: told('Lowest temperature', 'tempMinC', '°C', (values) => Math.min(...values)),
    warmest: told('Highest temperature', 'tempMaxC', '°C', (values) => Math.max(...values))
  }
}
