import {expect, test} from 'vitest'
import {json} from '../../src/formats/json.ts'
import type {Results} from '../../src/model/results.ts'
import {type MadeHabitats, type MadeOptions, madeStudy, twoHabitats} from './made-study.ts'
import {numberOf, type Tiny, tinyResults} from './tiny-study.ts'

/** Results checked against their schema, which lets no NaN and no infinite number pass, and written as JSON. */
function results(tiny: Tiny): Results {
  const computed = tinyResults(tiny)
  expect(() => json(computed)).not.toThrow()
  return computed
}

const made = (habitats: MadeHabitats, options?: MadeOptions) => results(madeStudy(habitats, options))

test('a season without any catch has no diversity, and says so everywhere', () => {
  const {scopes, comparison, methodsUsed} = made({wood: [[0], [0]], meadow: [[0], [0]]})
  const [scope] = scopes
  const {study} = scope!
  for (const measure of [study.coverage, study.chao1, study.ace, study.hill.q1.asymptotic])
    expect(numberOf(measure)).toBe('no individuals were caught')
  for (const measure of [study.incidence.chao2, study.incidence.ice, study.incidence.coverage])
    expect(numberOf(measure)).toBe('no species was found in any sampling unit')
  expect(study.curves.every(({points}) => points.length === 0)).toBe(true)
  expect(study.profile.orders).toEqual([])
  expect(numberOf(scope!.equalCoverage.coverage)).toContain('fewer than two samples')
  expect(numberOf(comparison.test.p)).toBe('nothing was caught anywhere')
  expect(methodsUsed.map(({id}) => id)).toEqual(['poisson-interval'])
})

test('one individual says nothing of coverage or of what was missed', () => {
  const {study} = made({wood: [[1]]}).scopes[0]!
  expect(numberOf(study.coverage)).toBe('one individual says nothing about the species that were missed')
  expect(numberOf(study.hill.q2.asymptotic)).toContain('no bound')
  expect(numberOf(study.incidence.coverage)).toContain('found in only one sampling unit')
  expect(study.coverageCurves.every(({at}) => at.length === 0)).toBe(true)
})

test('one species has diversity 1 at every order, with an interval of no width', () => {
  const {study} = made({wood: [[7], [5]]}).scopes[0]!
  expect([study.hill.q0, study.hill.q1, study.hill.q2].map(({asymptotic}) => numberOf(asymptotic))).toEqual([
    1, 1, 1
  ])
  expect('interval' in study.hill.q1.asymptotic && study.hill.q1.asymptotic.interval).toMatchObject({
    low: 1,
    high: 1
  })
})

test('a catch of singletons has no coverage and curves without bands', () => {
  const {study} = made({wood: [[1, 1, 1, 1]]}).scopes[0]!
  expect(numberOf(study.coverage)).toBe('every species was caught only once')
  expect(numberOf(study.ace)).toBe('every rare species was caught only once')
  const [richness] = study.curves
  expect(richness!.points.length).toBeGreaterThan(0)
  expect(richness!.points.every(({low}) => low === undefined)).toBe(true)
})

test('one site alone is described in full', () => {
  const {scopes, comparison} = made({wood: [[9, 4, 2, 1, 1]]})
  expect(comparison.reasons).toEqual(['there are fewer than two habitats'])
  expect(typeof numberOf(scopes[0]!.study.chao1)).toBe('number')
  expect(numberOf(scopes[0]!.composition.principalCoordinates.imaginary)).toBe(
    'there are fewer than two samples'
  )
})

test('one round and one site make one sampling unit, of which no jackknife can leave one out', () => {
  const {incidence} = made({wood: [[9, 4, 2, 1, 1]]}, {rounds: 1}).scopes[0]!.study
  expect(numberOf(incidence.units)).toBe(1)
  expect(numberOf(incidence.jackknife1)).toBe('the jackknife leaves out one unit of at least two')
  expect(numberOf(incidence.coverage)).toContain('one sampling unit says nothing')
  expect(numberOf(incidence.chao2)).toBe(5)
})

test('without any effort there are counts outside the effort and nothing else', () => {
  const tiny = madeStudy(twoHabitats)
  const lost = tiny.visits!.map(([trap, opened, collected, rest]) => {
    return [trap, opened, collected, {...rest, condition: 'missing'}] as const
  })
  const {catch: caught, scopes, comparison} = results({...tiny, visits: lost})
  expect(numberOf(caught.individuals)).toBe(0)
  expect(numberOf(caught.outsideEffort)).toBe(311)
  expect(numberOf(scopes[0]!.study.incidence.units)).toBe(0)
  expect(comparison.reasons[0]).toBe('no trap-nights count in any habitat')
})

test('a habitat that lost all its traps is left out, named, and the others are compared', () => {
  const tiny = madeStudy({
    ...twoHabitats,
    heath: [
      [4, 5],
      [6, 7]
    ]
  })
  const visits = tiny.visits!.map(([trap, opened, collected, rest]) => {
    return [
      trap,
      opened,
      collected,
      trap.startsWith('heath') ? {...rest, condition: 'missing'} : rest!
    ] as const
  })
  const {comparison, design, scopes} = results({...tiny, visits})
  expect(comparison.supported).toBe(true)
  expect(comparison.leftOut.map(({id, reason}) => [id, reason])).toEqual([
    ['heath', 'none of its trap-nights count']
  ])
  expect(design.supportsComparison).toBe(true)
  expect(design.unsharedRounds).toEqual([])
  expect(scopes[0]!.equalCoverage.leftOut.map(({id}) => id)).toEqual(['heath'])
})

test('a million individuals are described in seconds', () => {
  const wood = [600_000, 250_000, 100_000, 40_000, 8_000, 1_500, 400, 80, 15, 2, 2, 1, 1]
  const {study} = made({wood: [wood]}).scopes[0]!
  expect(numberOf(study.individuals)).toBe(1_000_001)
  expect(numberOf(study.coverage)).toBeCloseTo(1, 5)
  expect('interval' in study.hill.q1.asymptotic).toBe(true)
  expect(study.curves[0]!.points.find(({size}) => size === 1_000_001)?.value).toBe(13)
})
