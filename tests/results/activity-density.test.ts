import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

/** One habitat with `traps` traps at one site, open for `nights` nights, and `animals` animals in all. */
function season(traps: number, nights: number, animals: number): Tiny {
  const ids = Array.from({length: traps}, (_, index) => `T${index}`)
  const collected = new Date(Date.UTC(2026, 4, 1 + nights)).toISOString().slice(0, 10)
  return {
    sites: {A: 'wood'},
    traps: Object.fromEntries(ids.map((id) => [id, 'A'])),
    visits: ids.map((id) => [id, '2026-05-01', collected, {sample: id === 'T0' ? 'sorted' : 'empty'}]),
    catch: [['T0', collected, 'Abax ater', animals]]
  }
}

describe('individuals per 100 trap-nights agree with published seasons', () => {
  test.each([
    // Villa-Castillo & Wagner 2002, Environ. Entomol. 31:242-252.
    [160, 40, 919, 6400, 14.359],
    // Bergmann et al. 2012, Environ. Entomol. 41:1069-1076.
    [10, 42, 583, 420, 138.81],
    // Lobo 1996, Global Ecol. Biogeogr. Lett. 5:342-352.
    [60, 5, 1537, 300, 512.333]
  ])('%i traps x %i nights, %i animals', (traps, nights, animals, effort, rate) => {
    const results = tinyResults(season(traps, nights, animals))
    expect(numberOf(results.effort.net)).toBe(effort)
    expect(numberOf(results.catch.rate)).toBeCloseTo(rate, 3)
  })
})

test('with one site the range is counting error only, and says so', () => {
  const {habitats} = tinyResults(twoPlaces)
  const rate = habitats[0]!.catch.rate
  expect(isDefined(rate) && rate.interval?.method).toBe('counting error only, not a range for the habitat')
})

test('with two sites the range lies between sampling units, or traps where the authors decided so', () => {
  const bySite = tinyResults(twoPlaces)
  const byTrap = tinyResults({
    ...twoPlaces,
    settings: {analysis: {unit: 'trap', unit_reason: 'traps stood 100 m apart'}}
  })
  const whole = bySite.catch.rate
  const habitat = byTrap.habitats[0]!.catch.rate
  expect(isDefined(whole) && whole.interval?.method).toContain('between sampling units')
  expect(isDefined(habitat) && habitat.interval?.method).toContain('between sampling units')
  expect(byTrap.design.unitDecidedBy).toBe('the authors chose so in study.yaml: traps stood 100 m apart')
  expect(bySite.design.unitDecidedBy).toBeUndefined()
})

test('the confidence of study.yaml is that of the ranges', () => {
  const rate = tinyResults({...twoPlaces, settings: {analysis: {confidence: 0.9}}}).catch.rate
  expect(isDefined(rate) && rate.interval?.confidence).toBe(0.9)
})

test('a part of a sample raises the rate and nothing else', () => {
  const sorted = season(1, 10, 6)
  const {
    effort,
    catch: caught,
    scopes
  } = tinyResults({
    ...sorted,
    catch: sorted.catch!.map(([trap, day, taxon, count]) => [trap, day, taxon, count, {sampleFraction: 0.25}])
  })
  expect(numberOf(effort.net)).toBe(10)
  expect(numberOf(caught.individuals)).toBe(6)
  expect(numberOf(scopes[0]!.study.individuals)).toBe(6)
  expect(numberOf(caught.rate)).toBeCloseTo(240, 9)
  // Garwood 1936: 6 events, 95 %: 2.2019 to 13.0595 (from memory), over 10 nights x 0.25.
  expect(isDefined(caught.rate) && caught.rate.interval?.low).toBeCloseTo((2.2019 / 2.5) * 100, 1)
  expect(isDefined(caught.rate) && caught.rate.interval?.high).toBeCloseTo((13.0595 / 2.5) * 100, 1)
})

test('raised counts that are not whole keep the rate exact', () => {
  const raised = twoPlaces.catch!.map(
    ([trap, day, taxon, count]) => [trap, day, taxon, count, {sampleFraction: 0.3}] as const
  )
  const rate = tinyResults({...twoPlaces, catch: raised}).catch.rate
  expect(numberOf(rate)).toBeCloseTo((19 / 0.3 / 112) * 100, 4)
})

test('no catch of a kind has a range from the part of the samples that was sorted', () => {
  const half = twoPlaces.catch!.map(
    ([trap, day, taxon, count]) => [trap, day, taxon, count, {sampleFraction: 0.5}] as const
  )
  const upper = (tiny: Tiny) => {
    const carabus = tinyResults(tiny).taxa.find(({taxon}) => taxon === 'Carabus nemoralis')!
    const rate = carabus.habitats.find(({id}) => id === 'meadow')!.rate
    return isDefined(rate) ? rate.interval!.high : 0
  }
  expect(upper({...twoPlaces, catch: half})).toBeCloseTo(2 * upper(twoPlaces), 9)
})

test('rates per metre of rim stand beside the others only where trap types differ', () => {
  const types = {cup: {rim_diameter_mm: 100}, jar: {rim_diameter_mm: 200}}
  const {habitats, catch: caught} = tinyResults({
    ...twoPlaces,
    settings: {trap_types: types},
    traps: {
      M1: {siteId: 'M', trapType: 'cup'},
      M2: {siteId: 'M', trapType: 'cup'},
      W1: {siteId: 'W', trapType: 'jar'},
      W2: {siteId: 'W', trapType: 'jar'}
    }
  })
  const [first, second] = habitats
  expect(numberOf(first!.catch.rimRate!)).toBeCloseTo((8 / (56 * Math.PI * 0.1)) * 100, 9)
  expect(numberOf(second!.catch.rimRate!)).toBeCloseTo((11 / (56 * Math.PI * 0.2)) * 100, 9)
  expect(caught.rimRate).toBeDefined()
  expect(tinyResults({...twoPlaces, settings: {trap_types: {cup: types.cup}}}).catch.rimRate).toBeUndefined()
})

test('a rim that is not stated leaves the rate per metre of rim undefined, with the reason', () => {
  const {catch: caught} = tinyResults({
    ...twoPlaces,
    settings: {
      trap_types: {cup: {rim_diameter_mm: 100}, trough: {shape: 'rectangular', rim_diameter_mm: 100}}
    },
    traps: {
      M1: {siteId: 'M', trapType: 'cup'},
      M2: {siteId: 'M', trapType: 'cup'},
      W1: {siteId: 'W', trapType: 'trough'},
      W2: {siteId: 'W', trapType: 'trough'}
    }
  })
  expect(numberOf(caught.rimRate!)).toBe('the rim of some traps is not known')
})
