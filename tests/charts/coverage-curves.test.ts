import {expect, test} from 'vitest'
import {coverageCurves} from '../../src/charts/coverage-curves.ts'
import {lineFrom} from '../../src/charts/curve-lines.ts'
import type {Results} from '../../src/model/results.ts'
import {bareHabitat, manyHabitats, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const [figure] = coverageCurves.figures(results)

/** The fixture's curves, cut off below a coverage. */
function catchesFrom(coverage: number): Results {
  const scopes = results.scopes.map((scope) => ({
    ...scope,
    habitats: scope.habitats.map((habitat) => ({
      ...habitat,
      coverageCurves: habitat.coverageCurves.map((curve) => {
        const within = curve.at.filter((at) => at <= coverage).length
        return {...curve, within}
      })
    }))
  }))
  return {...results, scopes}
}

test('the data are all points of all curves with their bands', () => {
  const curves = results.scopes[0]!.habitats.flatMap(({coverageCurves: own}) => own)
  expect(column(figure, 'coverage')).toEqual(curves.flatMap(({at}) => at))
  expect(column(figure, 'high')).toEqual(curves.flatMap(({high}) => high))
})

test('the coverage at which habitats are compared is marked and told below', () => {
  expect(specValues(figure).filter(({at}) => at === 0.91)).toHaveLength(3)
  expect(specTexts(figure)).toContain('Upright line: the coverage of 0.910 at which habitats are compared.')
})

test('without a common coverage there is no such line', () => {
  const coverage = {label: 'coverage', kind: 'coverage', notDefined: 'one habitat has no catch'} as const
  const scopes = results.scopes.map((scope) => ({
    ...scope,
    equalCoverage: {...scope.equalCoverage, coverage}
  }))
  const [without] = coverageCurves.figures({...results, scopes})
  expect(specTexts(without).join(' ')).not.toContain('Upright line')
})

test('bands are said to be of the pooled catch, and no test', () => {
  expect(specTexts(figure).join(' ')).toContain(
    '95 % intervals of the pooled catch by bootstrap, not of the habitat; they are no test.'
  )
})

test('the axis starts near 1 where all catches are nearly complete, and at 0 where one is not', () => {
  const startOf = (coverage: number) =>
    Math.min(
      ...specValues(coverageCurves.figures(catchesFrom(coverage))[0])
        .map(({at}) => at)
        .filter((at) => typeof at === 'number')
    )
  expect(startOf(0.98)).toBeGreaterThan(0.8)
  expect(startOf(0.6)).toBeLessThan(0.25)
})

test('a line cut off where the axis starts gets a point there', () => {
  const points = [0.2, 0.6, 1].map((at) => ({at, value: at * 10, low: at * 9, high: at * 11}))
  const line = {label: 'Oak', style: 0, strong: points, thin: [], mark: points[2]!}
  expect(lineFrom(line, 0.4).strong[0]).toMatchObject({at: 0.4, value: 4})
  expect(lineFrom(line, 0.4).strong[0]?.low).toBeCloseTo(3.6, 12)
  expect(lineFrom(line, 0.6).strong.map(({at}) => at)).toEqual([0.6, 1])
  expect(lineFrom(line, 0).strong).toBe(points)
})

test('the description gives the numbers at the common coverage', () => {
  expect(figure?.alternative).toContain(
    'At the coverage of 0.910: Oak wood 16.2 (95 % interval 14.2 to 18.2) species, 8.10 common and 4.86 dominant'
  )
})

test('more than five habitats get a row of panels each', () => {
  const [six] = coverageCurves.figures(resultsOf(manyHabitats(6)))
  const [panels] = (six?.spec?.vconcat ?? []) as readonly {concat: unknown}[]
  expect(panels?.concat).toHaveLength(18)
})

test('without a curve there is no picture, and it is said why', () => {
  expect(coverageCurves.figures(resultsOf([bareHabitat]))[0]).toMatchObject({
    notDrawn: 'no habitat has enough catch in this scope for a curve'
  })
})
