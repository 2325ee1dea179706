import {expect, test} from 'vitest'
import {rarefaction} from '../../src/charts/rarefaction.ts'
import {rarefactionLines} from '../../src/charts/rarefaction-lines.ts'
import {bareHabitat, manyHabitats, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const [figure] = rarefaction.figures(results)

test('the data are all points of all curves, each within or beyond the catch', () => {
  const points = results.scopes[0]!.habitats.flatMap(({curves}) => curves.flatMap((curve) => curve.points))
  expect(column(figure, 'value')).toEqual(points.map(({value}) => value))
  expect(column(figure, 'part')).toEqual(
    points.map(({beyond}) => (beyond ? 'beyond the catch' : 'within the catch'))
  )
})

test('the three panels are named in words, not by order', () => {
  const text = JSON.stringify(figure?.spec)
  for (const name of ['All species', 'Common species', 'Dominant species']) expect(text).toContain(name)
  expect(text).not.toMatch(/order [012]|q ?= ?[012]/)
})

test('both parts of a line meet at the catch', () => {
  for (const {strong, thin, mark} of rarefactionLines(results.scopes[0]!.habitats, 0)) {
    expect(strong.at(-1)).toBe(mark)
    expect(thin[0]).toBe(mark)
    expect(thin.length).toBeGreaterThan(1)
  }
})

test('a curve that is not drawn on ends at the catch', () => {
  const [habitat] = results.scopes[0]!.habitats
  const curves = habitat!.curves.map(({order, points}) => ({
    order,
    points: points.filter(({beyond}) => !beyond)
  }))
  const [line] = rarefactionLines([{...habitat!, curves}], 1)
  expect(line?.thin).toEqual([])
})

test('the parts of a line are named once, and each habitat at the end of its line in each panel', () => {
  const texts = specTexts(figure)
  expect(texts.filter((text) => text === 'within the catch')).toHaveLength(1)
  expect(texts.filter((text) => text === 'beyond the catch')).toHaveLength(1)
  expect(texts.filter((text) => text === 'Hay meadow')).toHaveLength(3)
})

test('each line bears the symbol of its habitat at the catch', () => {
  const shapes = new Set(
    specValues(figure)
      .filter(({at, shape}) => at !== undefined && shape)
      .map(({shape}) => shape)
  )
  expect(shapes.size).toBe(3)
})

test('a habitat without catch is named below the picture', () => {
  expect(specTexts(figure)).toContain('No line, for want of catch: Quarry floor.')
  expect(figure?.alternative).toContain('Quarry floor: no line, 0 individuals caught.')
})

test('the description holds the numbers at the catch and where the line ends', () => {
  expect(figure?.alternative).toContain(
    'Oak wood: 548 individuals, 18 species; effective numbers of common species 8.64 and of dominant species 5.22; ' +
      'drawn on to 1,096 individuals, where 20.8 species are expected (band 16.7 to 25.0).'
  )
})

test('more than five habitats get a row of panels each', () => {
  const [six] = rarefaction.figures(resultsOf(manyHabitats(6)))
  const [panels] = (six?.spec?.vconcat ?? []) as readonly {concat: unknown}[]
  expect(panels?.concat).toHaveLength(18)
  expect(specTexts(six).filter((text) => text === 'within the catch')).toHaveLength(1)
})

test('without a curve there is no picture, and it is said why', () => {
  expect(rarefaction.figures(resultsOf([bareHabitat]))[0]).toMatchObject({
    notDrawn: 'no habitat has enough catch in this scope for a curve'
  })
  expect(rarefaction.figures(resultsOf([]))).toEqual([])
})
