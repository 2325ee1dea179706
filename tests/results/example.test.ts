import {expect, test} from 'vitest'
import {checkStudy} from '../../src/check-study.ts'
import {resultsSchema} from '../../src/model/results.ts'
import type {UsableStudy} from '../../src/model/study.ts'
import {computeResults} from '../../src/results/index.ts'
import {exampleStudy} from '../example-season/make-example.ts'
import {memorySource} from '../memory-source.ts'
import {checkedResults, fewReplicates, numberOf} from './tiny-study.ts'

async function example(): Promise<UsableStudy> {
  const usable = await checkStudy(memorySource(exampleStudy()))
  if ('unreadable' in usable) throw new Error('the example cannot be read')
  return usable
}

const usable = await example()

/** The example with the first site of each habitat and nothing of the others. */
function oneSiteEach(): UsableStudy {
  const {study} = usable
  const sites = study.sites.filter(({siteId}) => siteId.endsWith('1'))
  const kept = new Set(sites.map(({siteId}) => siteId))
  const traps = study.traps.filter(({siteId}) => kept.has(siteId))
  const trapIds = new Set(traps.map(({trapId}) => trapId))
  return {
    ...usable,
    study: {
      ...study,
      sites,
      traps,
      exposures: study.exposures.filter(({trapId}) => trapIds.has(trapId)),
      catch: study.catch.filter(({trapId, siteId}) => {
        return trapId === undefined ? kept.has(siteId ?? '') : trapIds.has(trapId)
      })
    }
  }
}

test('the example study has every section, within its schema', () => {
  const results = checkedResults(usable)
  expect(results.comparison.supported).toBe(true)
  expect(results.comparison.method).toBe('negative binomial')
  expect(numberOf(results.comparison.test.permutations.distinct)).toBe(216)
  expect(numberOf(results.comparison.blocks)).toBe(4)
  for (const {equalCoverage, composition, partitions, season, indicators} of results.scopes) {
    expect(equalCoverage.habitats).toHaveLength(3)
    expect(numberOf(composition.permanova.p)).toBeCloseTo(1 / 216, 9)
    expect(composition.nonMetricScaling.scores).toHaveLength(12)
    expect(partitions).toHaveLength(4)
    expect(season.length).toBeGreaterThan(5)
    expect(indicators.withheld).toBe(true)
  }
  expect(results.methodsUsed.map(({id}) => id)).toContain('negative-binomial')
  expect(results.methodsUsed.map(({id}) => id)).not.toContain('kruskal-wallis')
})

test('what the rows set aside hold is counted as far as it can be read', () => {
  const {setAside} = checkedResults(usable).sensitivity
  const {rows, readable, individuals, withoutThem, withThem} = setAside
  expect(numberOf(rows)).toBe(usable.balance.find(({table}) => table === 'catch')!.setAside)
  expect(numberOf(readable)).toBe(usable.catchSetAside!.length)
  expect(numberOf(withThem)).toBe((numberOf(withoutThem) as number) + (numberOf(individuals) as number))
  expect(numberOf(individuals)).toBeGreaterThan(0)
})

test('without the rows that were set aside the count with them is not defined, and not zero', () => {
  const {catchSetAside: _, ...rest} = usable
  const {setAside} = checkedResults(rest).sensitivity
  expect(numberOf(setAside.individuals)).toBe('the rows set aside are not at hand')
  expect(numberOf(setAside.withThem)).toBe('the rows set aside are not at hand')
})

test('with one site a habitat nothing is tested, the reasons are plain, and everything else is described', () => {
  const {comparison, design, scopes, methodsUsed} = checkedResults(oneSiteEach())
  expect(design.supportsComparison).toBe(false)
  expect(comparison.reasons).toEqual([
    'no habitat has more than one site, so that nothing tells what is due to the habitat and what to the place'
  ])
  for (const {composition, indicators, equalCoverage, study} of scopes) {
    expect([composition.supported, indicators.supported]).toEqual([false, false])
    expect(equalCoverage.habitats.length).toBeGreaterThan(1)
    expect(typeof numberOf(study.chao1)).toBe('number')
  }
  const ids = methodsUsed.map(({id}) => id)
  for (const test of [
    'negative-binomial',
    'permutation',
    'holm',
    'permanova',
    'dispersion',
    'indicator-value',
    'planned-rate',
    'planned-ratio'
  ])
    expect(ids).not.toContain(test)
  expect(ids).toContain('assemblage-bootstrap')
})

test('the results of the example do not depend on how often they are computed', () => {
  const first = JSON.stringify(computeResults(usable, fewReplicates))
  expect(JSON.stringify(computeResults(usable, fewReplicates))).toBe(first)
  expect(resultsSchema.safeParse(JSON.parse(first)).success).toBe(true)
})

test('200 replicates of the example take no longer than a person waits', () => {
  const {study} = usable
  const settings = {...study.settings, analysis: {...study.settings.analysis, replicates: 200}}
  const few = {...usable, study: {...study, settings}}
  computeResults(few)
  const before = performance.now()
  computeResults(few)
  // Under a second on a quiet machine; the bound leaves room for busy ones.
  expect(performance.now() - before).toBeLessThan(15_000)
})
