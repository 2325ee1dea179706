import {expect, test} from 'vitest'
import {hillProfile} from '../../src/charts/hill-profile.ts'
import {bareHabitat, type HabitatPlan, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const poor: HabitatPlan = {id: 'scree', label: 'Scree', counts: [2, 1], siteRates: [1, 2]}
const results = resultsOf([...threeHabitats, poor, bareHabitat])
const [figure] = hillProfile.figures(results)

test('the data hold the catch at every order and the estimates at orders 0, 1 and 2', () => {
  const kinds = column(figure, 'kind')
  expect(kinds.filter((kind) => kind === 'estimated')).toHaveLength(3 * 3)
  expect(kinds.filter((kind) => kind === 'as caught')).toHaveLength(4 * 31)
})

test('estimates of several habitats stand a little apart, so that none hides another', () => {
  const first = specValues(figure)
    .filter(({high, at}) => high !== undefined && typeof at === 'number' && Math.abs(at) < 0.2)
    .map(({at}) => at)
  expect(new Set(first).size).toBe(3)
})

test('a catch too small for an estimate and a habitat without catch are told below', () => {
  const texts = specTexts(figure)
  expect(texts).toContain('Scree: no estimate, the catch is too small.')
  expect(texts).toContain('No line, for want of catch: Quarry floor.')
})

test('an interval that goes on above the plot is said to do so', () => {
  expect(specTexts(figure).join(' ')).toContain('Some intervals go on above the plot.')
})

test('nothing caught leaves no picture, and it is said why', () => {
  expect(hillProfile.figures(resultsOf([bareHabitat]))[0]).toMatchObject({
    notDrawn: 'nothing in this scope was caught'
  })
})
