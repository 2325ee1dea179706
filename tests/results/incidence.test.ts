import {expect, test} from 'vitest'
import {madeStudy} from './made-study.ts'
import {numberOf, type Tiny, tinyResults} from './tiny-study.ts'

/** Two traps of one site in two rounds, one exposure of them lost; three species. */
const small: Tiny = {
  settings: {no_catch_rows: 'empty'},
  sites: {W: 'wood'},
  traps: {W1: 'W', W2: 'W'},
  visits: [
    ['W1', '2026-05-01', '2026-05-15', {round: 'a'}],
    ['W2', '2026-05-01', '2026-05-15', {round: 'a'}],
    ['W1', '2026-05-15', '2026-05-29', {round: 'b'}],
    ['W2', '2026-05-15', '2026-05-29', {round: 'b', condition: 'missing', sample: 'lost'}]
  ],
  catch: [
    ['W1', '2026-05-15', 'Genus a', 5],
    ['W2', '2026-05-15', 'Genus a', 1],
    ['W2', '2026-05-15', 'Genus b', 2],
    ['W1', '2026-05-29', 'Genus a', 1]
  ]
}

const named = {taxa: {'Genus a': {rank: 'species'}, 'Genus b': {rank: 'species'}}}

test('a sampling unit of incidence is a site in a round with effort', () => {
  const {incidence} = tinyResults({...small, ...named}).scopes[0]!.study
  expect(incidence.unit).toBe('site-round')
  expect(numberOf(incidence.units)).toBe(2)
  expect(numberOf(incidence.incidences)).toBe(3)
  expect(numberOf(incidence.uniques)).toBe(1)
  expect(numberOf(incidence.duplicates)).toBe(1)
})

test('where traps are the sampling units it is a trap in a round, and one without effort is none', () => {
  const {incidence} = tinyResults({
    ...small,
    ...named,
    settings: {...small.settings, analysis: {unit: 'trap'}}
  }).scopes[0]!.study
  expect(incidence.unit).toBe('trap-round')
  expect(numberOf(incidence.units)).toBe(3)
  expect(numberOf(incidence.incidences)).toBe(4)
})

test('estimates from occurrences are those of their formulas', () => {
  // Four sites, one round with catch and one without: T = 8, in which the species occur 4, 2, 2, 1 and 1 times.
  const {incidence} = tinyResults(
    madeStudy({
      wood: [
        [3, 1, 0, 1, 0],
        [2, 1, 1, 0, 0],
        [4, 0, 1, 0, 0],
        [1, 0, 0, 0, 6]
      ]
    })
  ).scopes[0]!.habitats[0]!
  expect(numberOf(incidence.units)).toBe(8)
  // S + ((T - 1)/T) Q1^2/(2 Q2) = 5 + (7/8) 4/4.
  expect(numberOf(incidence.chao2)).toBeCloseTo(5.875)
  // S + Q1 (T - 1)/T.
  expect(numberOf(incidence.jackknife1)).toBeCloseTo(5 + (2 * 7) / 8)
  expect(numberOf(incidence.jackknife2)).toBeCloseTo(5 + (2 * 13) / 8 - (2 * 36) / 56)
})

test('curves by sampling units run to twice their number', () => {
  const {incidence} = tinyResults(
    madeStudy({
      wood: [
        [3, 1, 0],
        [2, 0, 1],
        [4, 1, 0]
      ]
    })
  ).scopes[0]!.habitats[0]!
  const [richness] = incidence.curves
  expect(richness!.at.at(-1)).toBe(12)
  expect(richness!.at[richness!.within - 1]).toBe(6)
  expect(richness!.values[richness!.within - 1]).toBe(3)
  expect(richness!.low).toHaveLength(richness!.at.length)
})

test('a catch outside the effort adds no sampling unit', () => {
  const {incidence} = tinyResults({
    ...small,
    ...named,
    catch: [...small.catch!, ['W2', '2026-05-29', 'Genus b', 7]]
  }).scopes[0]!.study
  expect(numberOf(incidence.units)).toBe(2)
  expect(numberOf(incidence.incidences)).toBe(3)
})
