import {expect, test} from 'vitest'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

test('two collections of one day are told apart by the clock', () => {
  const {rounds} = tinyResults({
    sites: {A: 'wood'},
    traps: {A1: 'A'},
    visits: [
      ['A1', '2026-05-04T08:00', '2026-05-05T08:00'],
      ['A1', '2026-05-05T08:00', '2026-05-05T20:00']
    ],
    catch: [
      ['A1', '2026-05-05T08:00', 'Abax ater', 3],
      ['A1', '2026-05-05T20:00', 'Abax ater', 1]
    ]
  })
  expect(rounds.map(({catch: {individuals}}) => numberOf(individuals))).toEqual([3, 1])
})

test('a catch that no exposure accounts for stays outside the effort, at its site and in its round', () => {
  const results = tinyResults({
    ...twoPlaces,
    catch: [...twoPlaces.catch!, ['W1', '2026-05-28', 'Abax ater', 7]]
  })
  expect(numberOf(results.catch.outsideEffort)).toBe(7)
  expect(numberOf(results.catch.total)).toBe(26)
  expect(numberOf(results.sites.find(({id}) => id === 'W')!.catch.outsideEffort)).toBe(7)
  expect(numberOf(results.rounds[1]!.catch.outsideEffort)).toBe(7)
  expect(numberOf(results.taxa.find(({taxon}) => taxon === 'Abax ater')!.outsideEffort)).toBe(7)
  expect(numberOf(results.scopes[0]!.study.individuals)).toBe(19)
})

const pooled: Tiny = {
  sites: {A: 'wood', B: 'wood'},
  traps: {A1: 'A', A2: 'A', B1: 'B'},
  visits: [
    ['A1', '2026-05-04', '2026-05-18', {round: 'I'}],
    ['A2', '2026-05-04', '2026-05-18', {round: 'I', condition: 'missing'}],
    ['B1', '2026-05-04', '2026-05-18', {round: 'I', sample: 'empty'}]
  ],
  catch: [['', '', 'Abax ater', 6, {siteId: 'A', round: 'I', pooledTraps: 1}]]
}

test('a catch pooled in the field belongs to all exposures of its site and round', () => {
  const results = tinyResults(pooled)
  expect(numberOf(results.effort.net)).toBe(28)
  expect(numberOf(results.catch.individuals)).toBe(6)
  expect(results.protocol.pooled).toBe(true)
  expect(results.sites.map(({catch: {individuals}}) => numberOf(individuals))).toEqual([6, 0])
})

test('what a single trap of a pooled site caught is not defined', () => {
  const [first, , third] = tinyResults(pooled).traps
  expect(numberOf(first!.catch.rate)).toBe('its catch was pooled with that of other traps in the field')
  expect(numberOf(third!.catch.rate)).toBe(0)
})

test('pooled traps cannot stand as sampling units, whatever study.yaml says', () => {
  const {design} = tinyResults({...pooled, settings: {analysis: {unit: 'trap'}}})
  expect(design.unit).toBe('site')
  expect(design.unitDecidedBy).toContain('pooled in the field')
})

test('one empty cup among pooled ones is no contradiction, all of them are', () => {
  const withWords = (...samples: readonly ('empty' | 'sorted')[]) =>
    tinyResults({
      ...pooled,
      visits: samples.map((sample, index) => [
        `A${index + 1}`,
        '2026-05-04',
        '2026-05-18',
        {round: 'I', sample}
      ])
    })
  expect(numberOf(withWords('empty', 'sorted').effort.net)).toBe(28)
  expect(numberOf(withWords('empty', 'empty').effort.net)).toBe(0)
  expect(numberOf(withWords('empty', 'empty').catch.outsideEffort)).toBe(6)
})

test('nothing caught is a result: rates of zero with a range, and no diversity', () => {
  const results = tinyResults({
    ...twoPlaces,
    visits: twoPlaces.visits!.map(([trap, opened, collected]) => [
      trap,
      opened,
      collected,
      {sample: 'empty'}
    ]),
    catch: []
  })
  expect(numberOf(results.catch.rate)).toBe(0)
  expect(numberOf(results.catch.names)).toBe(0)
  expect(results.taxa).toEqual([])
  expect(numberOf(results.scopes[0]!.study.chao1)).toBe('no individuals were caught')
  expect(numberOf(results.habitats[0]!.shareOfCatch)).toBe('nothing was caught')
})

test('groups have rates of their own', () => {
  const {habitats} = tinyResults({
    ...twoPlaces,
    settings: {
      ...twoPlaces.settings,
      analysis: {scopes: {abax: {label: 'Abax', taxa: ['Abax ater']}, all: {}}}
    }
  })
  const wood = habitats[0]!
  expect(wood.groups.map(({label, catch: {individuals}}) => [label, numberOf(individuals)])).toEqual([
    ['Abax', 8],
    ['all', 11]
  ])
  expect(numberOf(wood.groups[0]!.catch.rate)).toBeCloseTo((8 / 56) * 100, 9)
})
