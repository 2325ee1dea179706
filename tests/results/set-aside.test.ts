import {expect, test} from 'vitest'
import type {CatchRecord} from '../../src/model/study.ts'
import {madeStudy, roundDay, speciesName} from './made-study.ts'
import {checkedResults, numberOf, tinyResults, tinyStudy} from './tiny-study.ts'

const tiny = madeStudy({wood: [[9, 3, 1]], meadow: [[4, 2]]})
const aside = ['wood1-1', roundDay(0), speciesName(3), 2] as const

/** The study with rows of its catch set aside, as the rules leave it. */
function withAside(rows: readonly (readonly [string, string, string, number])[], change: object = {}) {
  const usable = tinyStudy(tiny)
  const known = tinyStudy({...tiny, catch: rows}).study.catch.map((row): CatchRecord => ({...row, ...change}))
  return checkedResults({
    ...usable,
    balance: [
      {
        table: 'catch',
        file: 'catch.csv',
        readAs: 'UTF-8, comma',
        read: 5,
        used: 4,
        setAside: rows.length,
        byCode: {}
      }
    ],
    catchSetAside: known
  })
}

test('headline numbers stand without and with the rows set aside, as if these had been in use', () => {
  const {sensitivity, habitats, scopes} = withAside([aside])
  const {counted, effect} = sensitivity.setAside
  expect(numberOf(counted)).toBe(1)
  expect(effect.map(({of}) => of)).toEqual(['all names', scopes[0]!.label])
  const [all, group] = effect.map(({habitats: own}) => own.find(({id}) => id === 'wood')!)
  const full = tinyResults({...tiny, catch: [...tiny.catch!, aside]})
  const [before, after] = [habitats, full.habitats].map((own) => own.find(({id}) => id === 'wood')!)
  expect(numberOf(all!.without.rate)).toBe(numberOf(before!.catch.rate))
  expect(numberOf(all!.withThem.rate)).toBe(numberOf(after!.catch.rate))
  expect(all!.without.species).toBeUndefined()
  const assemblage = (results: typeof full) => results.scopes[0]!.habitats.find(({id}) => id === 'wood')!
  const described = assemblage(full)
  expect(numberOf(group!.without.species!)).toBe(3)
  expect(numberOf(group!.withThem.species!)).toBe(4)
  expect(numberOf(group!.withThem.chao1!)).toBe(numberOf(described.chao1))
})

test('a row that names no trap in use, or no whole count, cannot be counted, and that is told apart', () => {
  for (const change of [{trapId: 'nowhere'}, {count: -3}, {count: 1.5}, {sampleFraction: 0}]) {
    const {counted, effect} = withAside([aside], change).sensitivity.setAside
    expect([numberOf(counted), effect]).toEqual([0, []])
  }
})

test('without rows set aside there is nothing to compare', () => {
  const {counted, effect} = tinyResults(tiny).sensitivity.setAside
  expect([numberOf(counted), effect]).toEqual([0, []])
})
