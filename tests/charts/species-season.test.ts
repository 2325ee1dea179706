import {expect, test} from 'vitest'
import {speciesSeason} from '../../src/charts/species-season.ts'
import {bareHabitat, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf(threeHabitats)
const [figure] = speciesSeason.figures(results)

test('the data hold the rate of every species in every round, empty where nothing counts', () => {
  const season = results.scopes[0]!.season
  expect(column(figure, 'rate_per_100_nights')).toEqual(season.flatMap(({rates}) => rates))
})

test('each species has its highest bar at full height', () => {
  const bars = specValues(figure).filter(({rate}) => typeof rate === 'number' && rate > 0)
  const heights = (base: number) =>
    bars.filter((bar) => bar.base === base).map(({base: bottom, top}) => Number(bottom) - Number(top))
  expect(bars).not.toEqual([])
  for (const base of new Set(bars.map(({base: bottom}) => Number(bottom))))
    expect(Math.max(...heights(base))).toBe(20)
})

test('the highest activity-density stands beside each row', () => {
  expect(specTexts(figure).filter((text) => text === '11.4')).toHaveLength(3)
})

test('a round in which no trap-night counts has no base line, and that is said', () => {
  expect(specTexts(figure)).not.toContain('Where there is no base line, no trap-night counts.')
  const scopes = results.scopes.map((scope) => ({
    ...scope,
    season: scope.season.map((species) => ({
      ...species,
      rates: species.rates.map((rate, round) => (round === 3 ? null : rate))
    }))
  }))
  expect(specTexts(speciesSeason.figures({...results, scopes})[0])).toContain(
    'Where there is no base line, no trap-night counts.'
  )
})

test('the description tells first, last and highest round as opened to collected', () => {
  expect(figure?.alternative).toContain(
    'Pterostichus melanarius: first in the round of 19 April to 3 May 2026, last in that of 6 to 20 September 2026, most in that of 17 to 31 May 2026 (11.4 per 100 trap-nights).'
  )
})

test('without a species caught often enough there is no picture, and it is said why', () => {
  expect(speciesSeason.figures(resultsOf([bareHabitat]))[0]).toMatchObject({
    notDrawn: 'no species was caught often enough to tell of its season'
  })
})
