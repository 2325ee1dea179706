import {expect, test} from 'vitest'
import type {Measure} from '../../src/model/quantity.ts'
import type {AssemblageResult, CurveResult} from '../../src/model/results.ts'
import {computeResults} from '../../src/results/index.ts'
import {plainRunner, replicatesOf} from '../../src/results/replicates.ts'
import {madeStudy} from './made-study.ts'
import {numberOf, tinyResults, tinyStudy} from './tiny-study.ts'

/** Spiders of girdled hemlock plots (Chao et al. 2014, from memory). */
const girdled = [46, 22, 17, 15, 15, 9, 8, 6, 6, 4, 2, 2, 2, 2, ...Array<number>(12).fill(1)]

const settings = {analysis: {replicates: 200}} as const
const forest = madeStudy({wood: [girdled]}, {settings})

/** With all its replicates, unlike tinyResults. */
function wood(analysis: object = {}): AssemblageResult {
  const tiny = {...forest, settings: {...forest.settings, analysis: {replicates: 200, ...analysis}}}
  return computeResults(tinyStudy(tiny)).scopes[0]!.habitats[0]!
}

const definedAs = (measure: Measure) => {
  if ('notDefined' in measure) throw new Error(measure.notDefined)
  return measure
}

const widthOf = (measure: Measure) => {
  const {interval} = definedAs(measure)
  return interval!.high - interval!.low
}

test('asymptotic diversity of habitats has a standard error and an interval at every order', () => {
  const {hill, coverage} = wood()
  for (const {asymptotic} of [hill.q0, hill.q1, hill.q2]) {
    const {value, standardError, interval} = definedAs(asymptotic)
    expect(standardError).toBeGreaterThan(0)
    expect(interval!.low).toBeLessThan(value)
    expect(interval!.high).toBeGreaterThan(value)
  }
  expect(definedAs(coverage).interval!.method).toBe('estimate ± 1.96 standard errors, assemblage bootstrap')
})

test('every interval follows the confidence that study.yaml asks for', () => {
  const usual = wood()
  const {chao1, ace, hill, coverage, incidence, curves} = wood({confidence: 0.8})
  const measures: [Measure, Measure][] = [
    [chao1, usual.chao1],
    [ace, usual.ace],
    [coverage, usual.coverage],
    [hill.q0.asymptotic, usual.hill.q0.asymptotic],
    [hill.q1.asymptotic, usual.hill.q1.asymptotic],
    [incidence.chao2, usual.incidence.chao2]
  ]
  for (const [narrow, wide] of measures) {
    expect(definedAs(narrow).interval!.confidence).toBe(0.8)
    expect(widthOf(narrow)).toBeLessThan(widthOf(wide) + 1e-12)
  }
  expect(widthOf(chao1) / widthOf(usual.chao1)).toBeLessThan(0.7)
  const bandAt = (own: AssemblageResult['curves']) => own[0]!.points.at(-1)!
  expect(bandAt(curves).high! - bandAt(curves).low!).toBeLessThan(
    bandAt(usual.curves).high! - bandAt(usual.curves).low!
  )
  expect(definedAs(coverage).interval!.method).toContain('1.28 standard errors')
})

test('single sites have estimates without a bootstrap', () => {
  const {hill, coverage, curves, coverageCurves, profile, estimators} =
    tinyResults(forest).scopes[0]!.sites[0]!
  expect(definedAs(hill.q0.asymptotic).interval).toBeDefined()
  expect(definedAs(hill.q1.asymptotic).interval).toBeUndefined()
  expect(definedAs(coverage).interval).toBeUndefined()
  expect([curves, coverageCurves, profile.orders, estimators]).toEqual([[], [], [], []])
})

test('the long table names every estimator with its variant, what it rests on and whether it is a lower bound', () => {
  const {estimators} = wood()
  expect(estimators.map(({estimator, kind}) => [estimator, kind])).toEqual([
    ['Chao1', 'lower bound'],
    ['ACE', 'estimate'],
    ['Chao2', 'lower bound'],
    ['ICE', 'estimate'],
    ['Jackknife 1', 'estimate'],
    ['Jackknife 2', 'estimate']
  ])
  expect(estimators[0]).toMatchObject({variant: 'S + ((n − 1)/n) f1²/(2 f2)', basedOn: 'individuals'})
  expect(estimators[2]!.basedOn).toBe('sampling units (a site in a round)')
  expect(numberOf(estimators[0]!.estimate)).toBeCloseTo(43.893, 3)
})

test('bands hold the curve and meet the whole numbers of one individual', () => {
  const {curves} = wood()
  for (const {points} of curves) {
    for (const {value, low, high} of points) {
      expect(low).toBeLessThanOrEqual(value)
      expect(high).toBeGreaterThanOrEqual(value)
    }
    expect(points[0]).toMatchObject({size: 1, value: 1, low: 1, high: 1})
  }
})

function expectColumns({at, values, low, high, within}: CurveResult): void {
  expect(values).toHaveLength(at.length)
  expect(low).toHaveLength(at.length)
  expect(high).toHaveLength(at.length)
  expect(at.every((place, index) => index === 0 || place > at[index - 1]!)).toBe(true)
  expect(values.every((value, index) => low[index]! <= value && value <= high[index]!)).toBe(true)
  expect(within).toBeGreaterThan(0)
  expect(within).toBeLessThanOrEqual(at.length)
}

test('the curve over coverage passes the catch at its own coverage', () => {
  const {coverageCurves, coverage} = wood()
  expect(coverageCurves.map(({order}) => order)).toEqual([0, 1, 2])
  for (const curve of coverageCurves) {
    expectColumns(curve)
    expect(curve.at[curve.within - 1]).toBeCloseTo(numberOf(coverage) as number, 5)
  }
  const [richness] = coverageCurves
  expect(richness!.values[richness!.within - 1]).toBe(26)
  expect(richness!.values.at(-1)).toBeCloseTo(34.7307, 3)
})

test('the profile has observed diversity from order 0 to 3 and asymptotic points at 0, 1 and 2', () => {
  const {profile, hill} = wood()
  expect(profile.orders[0]).toBe(0)
  expect(profile.orders.at(-1)).toBe(3)
  expect(profile.observed[profile.orders.indexOf(1)]).toBeCloseTo(numberOf(hill.q1.observed) as number, 4)
  expect(profile.asymptotic.map(({order}) => order)).toEqual([0, 1, 2])
  expect(profile.asymptotic[2]!.value).toBeCloseTo(8.175, 2)
})

test('a complete sample has nothing beyond it on the curve over coverage', () => {
  const {coverageCurves} = tinyResults(madeStudy({wood: [[9, 5, 4]]})).scopes[0]!.habitats[0]!
  for (const curve of coverageCurves) {
    expect(curve.at.at(-1)).toBe(1)
    expect(curve.within).toBe(curve.at.length)
  }
})

test('replicates split among runners and joined are those of one runner', () => {
  const usable = tinyStudy(forest)
  const split = computeResults(usable, (task) => [
    ...replicatesOf(task, 0, 70),
    ...replicatesOf(task, 70, task.replicates)
  ])
  expect(JSON.stringify(split)).toBe(JSON.stringify(computeResults(usable, plainRunner)))
})
