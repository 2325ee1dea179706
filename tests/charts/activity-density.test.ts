import {expect, test} from 'vitest'
import {activityDensity} from '../../src/charts/activity-density.ts'
import {isDefined} from '../../src/model/quantity.ts'
import {bareHabitat, extremeHabitats, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const [figure] = activityDensity.figures(results)

test('the data are the rates of habitats and of their sites, unrounded', () => {
  const expected = results.habitats.flatMap((habitat) => [
    habitat,
    ...results.sites.filter((site) => site.habitat === habitat.id)
  ])
  expect(column(figure, 'rate_per_100_nights')).toEqual(
    expected.map(({catch: {rate}}) => (isDefined(rate) ? rate.value : null))
  )
  expect(column(figure, 'low')).toEqual(
    expected.map(({catch: {rate}}) => (isDefined(rate) ? (rate.interval?.low ?? null) : null))
  )
  expect(column(figure, 'site_id').slice(0, 5)).toEqual([null, 'oak-1', 'oak-2', 'oak-3', 'oak-4'])
})

test('the numbers and their interval stand beside each row', () => {
  const numbers = specValues(figure).filter(({range}) => range !== undefined)
  expect(numbers.map(({rate, range}) => [rate, range])).toContainEqual(['48.9', '36.9 to 64.7'])
  expect(specTexts(figure)).toContain('rate and 95 % interval')
})

test('the description holds rates, intervals, the range of the sites and the method', () => {
  expect(figure?.alternative).toContain(
    'Oak wood: 48.9 (95 % interval 36.9 to 64.7); its 4 sites from 36.4 to 62.1.'
  )
  expect(figure?.alternative).toContain(
    'Quarry floor: 0 (95 % interval 0 to 0.600); 0 at each of its 2 sites.'
  )
  expect(figure?.alternative).toContain(
    'Interval of Quarry floor: counting error only, not a range for the habitat.'
  )
})

test('intervals of counting error only are drawn thinner than those between sampling units, and that is said', () => {
  const widths = specValues(figure)
    .filter(({low}) => low !== undefined)
    .map(({row, strokeWidth}) => [row, strokeWidth])
  expect(widths).toContainEqual([0, 2])
  expect(widths).toContainEqual([3, 0.8])
  expect(specTexts(figure)).toContain('Thin lines: counting error only, not a range for the habitat.')
})

test('an interval that reaches far beyond all rates is cut at the axis, its numbers are whole', () => {
  const [wide] = activityDensity.figures(resultsOf([{...threeHabitats[0]!, spread: 3.2}]))
  const [drawn] = specValues(wide).filter(({cutHigh}) => cutHigh === true)
  expect(drawn?.high).toBeLessThan(200)
  expect(wide?.alternative).toContain('1.99 to 1,200')
})

test('the axis is logarithmic only where rates lie far apart and none is nought', () => {
  expect(JSON.stringify(activityDensity.figures(resultsOf(extremeHabitats))[0]?.spec)).toContain('"log"')
  expect(
    JSON.stringify(activityDensity.figures(resultsOf([...extremeHabitats, bareHabitat]))[0]?.spec)
  ).not.toContain('"log"')
})

test('without any rate there is no picture, and it is said why', () => {
  expect(activityDensity.figures(resultsOf([]))[0]).toMatchObject({notDrawn: 'no habitat is on record'})
  const idle = resultsOf([{...threeHabitats[0]!, siteRates: [null]}])
  const [none] = activityDensity.figures(idle)
  expect(none).toMatchObject({notDrawn: 'no trap-night counts in any habitat'})
  expect(none?.alternative).toContain('Oak wood: not defined, because no trap-night counts.')
})
