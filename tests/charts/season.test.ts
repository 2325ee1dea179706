import {expect, test} from 'vitest'
import {momentOf, monthAxis} from '../../src/charts/month-axis.ts'
import {season} from '../../src/charts/season.ts'
import {isDefined} from '../../src/model/quantity.ts'
import {bareHabitat, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const [figure] = season.figures(results)

test('the data are the rates of each round and habitat, with gaps where nothing counts', () => {
  const rates = results.rounds.flatMap(({habitats}) => habitats.map((habitat) => habitat.catch.rate))
  expect(column(figure, 'rate_per_100_nights')).toEqual(
    rates.map((rate) => (isDefined(rate) ? rate.value : null))
  )
  expect(column(figure, 'rate_per_100_nights')).toContain(null)
})

test('a point stands at the middle of the dates of its round', () => {
  const moments = specValues(figure).map(({moment}) => moment)
  expect(moments).toContain(momentOf('2026-06-21'))
})

test('a round in which nothing counts interrupts the line', () => {
  const wall = specValues(figure).filter(
    ({value, moment, other}) => value === null && moment !== undefined && other === undefined
  )
  expect(wall).toHaveLength(1)
})

test('months stand on a scale in universal time', () => {
  const text = JSON.stringify(figure?.spec)
  expect(text).toContain('"type":"utc"')
  expect(text).toContain('months of 2026')
})

test('the description gives the highest and the lowest round of each habitat with their dates', () => {
  expect(figure?.alternative).toContain(
    'Oak wood: highest 68.4 in the round of 17 to 31 May 2026, lowest 24.4 in the round of 6 to 20 September 2026.'
  )
  expect(figure?.alternative).toContain('Quarry floor: 0 in each of its rounds.')
})

test('a habitat in which nothing ever counts has a panel that says so', () => {
  const [some] = season.figures(
    resultsOf([...threeHabitats, {...bareHabitat, season: [null, null, null, null, null]}])
  )
  expect(specTexts(some)).toContain('no trap-night counts')
  expect(some?.alternative).toContain('Quarry floor: no trap-night counts.')
})

test('one round is not a season', () => {
  const [one] = season.figures({...results, rounds: results.rounds.slice(0, 1)})
  expect(one).toMatchObject({
    notDrawn: 'trap-nights count in one round only, and a season takes at least two'
  })
  expect(season.figures(resultsOf([]))[0]).toMatchObject({notDrawn: 'no habitat is on record'})
})

test('the axis runs over whole months, with a tick at the start of each', () => {
  const axis = monthAxis(['2026-04-19', '2026-09-20'], 168)
  expect(axis.domain).toEqual([momentOf('2026-04-01'), momentOf('2026-10-01')])
  expect(axis.ticks).toHaveLength(6)
})

test('a long time has ticks for every third month or for years', () => {
  expect(
    monthAxis(['2025-02-01', '2026-12-20'], 168).ticks.map((tick) => new Date(tick).getUTCMonth())
  ).toEqual([3, 6, 9, 0, 3, 6, 9])
  const years = monthAxis(['2015-02-01', '2026-12-20'], 168)
  expect(years.labelExpression).toBe('utcyear(datum.value)')
  expect(years.title).toBe('year')
})

test('a season over the turn of the year names both years', () => {
  expect(monthAxis(['2025-11-01', '2026-02-20'], 168).title).toBe('months of 2025 to 2026')
})
