import {expect, test} from 'vitest'
import {effort} from '../../src/charts/effort.ts'
import {bareHabitat, measure, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const [figure] = effort.figures(results)

test('the data are the trap-nights of the results, unrounded', () => {
  expect(column(figure, 'habitat')).toEqual(results.habitats.map(({label}) => label))
  expect(column(figure, 'net_nights')).toEqual([1340, 1176, 766, 630])
  expect(column(figure, 'unsorted_nights')).toEqual([0, 56, 0, 0])
  expect(column(figure, 'lost_nights')).toEqual([60, 168, 284, 70])
  expect(column(figure, 'share_lost')).toEqual([60 / 1400, 168 / 1400, 284 / 1050, 70 / 700])
})

test('each bar has a part for each number above nought, and the parts keep their order', () => {
  const bars = specValues(figure).filter(({fillOpacity}) => fillOpacity !== undefined)
  expect(bars.map(({row, order, value}) => [row, order, value])).toEqual([
    [0, 0, 1340],
    [0, 2, 60],
    [1, 0, 1176],
    [1, 1, 56],
    [1, 2, 168],
    [2, 0, 766],
    [2, 2, 284],
    [3, 0, 630],
    [3, 2, 70]
  ])
})

test('the numbers stand beside the bars', () => {
  const texts = specTexts(figure)
  for (const text of ['1,340', '56', '168', '12 %', '4.3 %']) expect(texts).toContain(text)
})

test('the description holds every number and where most was lost', () => {
  expect(figure?.alternative).toContain(
    'Hay meadow: 1,176 achieved, 56 not sorted yet, 168 lost (12 % of those planned).'
  )
  expect(figure?.alternative).toContain('In all, 3,409 of 3,850 planned trap-nights were achieved.')
  expect(figure?.alternative).toContain(
    'The largest share was lost in Field margin along the old stone wall.'
  )
})

test('a number that is not defined is a dash in the picture and a gap in the data', () => {
  const [habitat] = resultsOf(threeHabitats.slice(0, 1)).habitats
  const unknown = {
    ...habitat!,
    effort: {
      ...habitat!.effort,
      planned: measure('planned', 'nights', null),
      lost: measure('lost', 'nights', null)
    }
  }
  const [without] = effort.figures({...results, habitats: [unknown, habitat!]})
  expect(column(without, 'lost_nights')[0]).toBeNull()
  expect(specTexts(without)).toContain('–')
  expect(without?.alternative).toContain('lost not defined')
})

test('what is not known of any habitat has no column in the picture', () => {
  const nothing = measure('x', 'nights', null)
  const [habitat] = resultsOf(threeHabitats.slice(0, 1)).habitats
  const {net} = habitat!.effort
  const old = {
    ...habitat!,
    effort: {...habitat!.effort, unsorted: nothing, lost: nothing, shareLost: nothing}
  }
  const [figure] = effort.figures({
    ...results,
    habitats: [old],
    effort: {...results.effort, net, planned: nothing}
  })
  expect(specTexts(figure)).toContain('achieved')
  expect(specTexts(figure)).not.toContain('lost')
  expect(figure?.alternative).not.toContain('not defined')
})

test('without any trap-night there is no picture, and it is said why', () => {
  expect(effort.figures(resultsOf([]))[0]).toMatchObject({notDrawn: 'no habitat is on record'})
  const idle = resultsOf([{...threeHabitats[0]!, siteRates: []}])
  expect(effort.figures(idle)[0]).toMatchObject({notDrawn: 'there are no trap-nights on record'})
})

test('a caution stands below the picture and in the description', () => {
  const [habitat] = results.habitats
  const net = measure('net', 'nights', 1340, {caution: 'clock times are partly missing'})
  const [careful] = effort.figures({...results, habitats: [{...habitat!, effort: {...habitat!.effort, net}}]})
  expect(specTexts(careful)).toContain('Oak wood: clock times are partly missing.')
  expect(careful?.alternative).toContain('1,340 (clock times are partly missing) achieved')
})
