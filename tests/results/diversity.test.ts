import {expect, test} from 'vitest'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

/** Spiders of girdled hemlock plots: 46,22,17,15,15,9,8,6,6,4, four 2s, twelve 1s (Chao et al. 2014, from memory). */
const girdled = [46, 22, 17, 15, 15, 9, 8, 6, 6, 4, 2, 2, 2, 2, ...Array<number>(12).fill(1)]

const forest: Tiny = {
  sites: {A: 'wood'},
  traps: {A1: 'A'},
  visits: [['A1', '2026-05-04', '2026-05-18']],
  catch: girdled.map((count, index) => [
    'A1',
    '2026-05-18',
    `Genus species${String.fromCharCode(97 + index)}`,
    count
  ])
}

test('diversity of the hemlock-forest spiders is that of the published analysis', () => {
  const {study, habitats, sites} = tinyResults(forest).scopes[0]!
  expect(numberOf(study.individuals)).toBe(168)
  expect(numberOf(study.species)).toBe(26)
  expect(numberOf(study.chao1)).toBeCloseTo(43.893, 3)
  expect(numberOf(study.coverage)).toBeCloseTo(0.92886, 5)
  expect(numberOf(study.hill.q1.observed)).toBeCloseTo(12.06, 3)
  expect(numberOf(study.hill.q2.asymptotic)).toBeCloseTo(8.175, 3)
  expect(numberOf(habitats[0]!.chao1)).toBe(numberOf(study.chao1))
  expect(numberOf(sites[0]!.chao1)).toBe(numberOf(study.chao1))
})

test('curves run to the doubled catch and are marked where they go beyond it', () => {
  const {study} = tinyResults(forest).scopes[0]!
  const [richness] = study.curves
  expect(study.curves.map(({order}) => order)).toEqual([0, 1, 2])
  expect(richness!.points.at(-1)).toMatchObject({size: 336, beyond: true})
  expect(richness!.points.at(-1)!.value).toBeCloseTo(34.7307, 3)
  expect(richness!.points.find(({size}) => size === 168)).toMatchObject({size: 168, value: 26, beyond: false})
})

test('sites have neither curves nor ranks, so that results.json stays small and names no sensitive kind with a place', () => {
  const {sites, habitats} = tinyResults(forest).scopes[0]!
  expect(sites[0]!.curves).toEqual([])
  expect(sites[0]!.ranks).toEqual([])
  expect(habitats[0]!.ranks[0]).toEqual({rank: 1, taxon: 'Genus speciesa', individuals: 46, share: 46 / 168})
})

test('few doubletons stand beside the lower bound as a caution', () => {
  const {chao1} = tinyResults(forest).scopes[0]!.study
  expect('caution' in chao1 && chao1.caution).toContain(
    'rests on 4 species caught twice; one more such species would make it'
  )
})

test('a sample too small for asymptotic diversity has none, and says why', () => {
  const {hill} = tinyResults({
    ...forest,
    catch: ['a', 'b', 'c'].map((end) => ['A1', '2026-05-18', `Genus species${end}`, 2])
  }).scopes[0]!.study
  expect(numberOf(hill.q0.asymptotic)).toContain('too small for asymptotic diversity')
  expect(numberOf(hill.q0.observed)).toBe(3)
})

test('names that a finer name stands for are left out, with their animals, and richness is given both ways', () => {
  const [scope] = tinyResults({
    ...twoPlaces,
    catch: [...twoPlaces.catch!, ['W1', '2026-05-18', 'Abax', 4], ['W1', '2026-05-18', 'Carabidae', 2]],
    taxa: {
      ...twoPlaces.taxa,
      Abax: {rank: 'genus', family: 'Carabidae'},
      Carabidae: {rank: 'family', family: 'Carabidae'}
    }
  }).scopes
  expect(scope!.leftOut.map(({taxon, individuals}) => [taxon, numberOf(individuals)])).toEqual([
    ['Abax', 4],
    ['Carabidae', 2]
  ])
  expect(numberOf(scope!.leftOutIndividuals)).toBe(6)
  expect(numberOf(scope!.study.individuals)).toBe(19)
  expect(numberOf(scope!.study.species)).toBe(3)
  expect(numberOf(scope!.study.allNames.species)).toBe(5)
})

test('what counts as a species is decided for the whole study, not habitat by habitat', () => {
  const [scope] = tinyResults({
    ...twoPlaces,
    catch: [
      ['W1', '2026-05-18', 'Amara', 4],
      ['M1', '2026-05-18', 'Amara aenea', 2]
    ],
    settings: {}
  }).scopes
  expect(scope!.habitats.map(({label, species}) => [label, numberOf(species)])).toEqual([
    ['meadow', 1],
    ['wood', 0]
  ])
})

test('a name caught only outside the effort displaces no coarser name', () => {
  const [scope] = tinyResults({
    ...twoPlaces,
    settings: {},
    catch: [
      ['W1', '2026-05-18', 'Amara', 4],
      ['M1', '2026-05-20', 'Amara aenea', 2]
    ]
  }).scopes
  expect(scope!.leftOut).toEqual([])
  expect(numberOf(scope!.study.species)).toBe(1)
})

test('richness may be ranked only at equal effort and equal coverage', () => {
  const even: Tiny = {
    ...twoPlaces,
    catch: ['M1', 'W1'].flatMap((trap) =>
      ['a', 'b'].map((end) => {
        return [trap, '2026-05-18', `Genus species${end}`, 5] as const
      })
    )
  }
  const rankable = (tiny: Tiny) =>
    tinyResults({...tiny, settings: {no_catch_rows: 'empty'}}).scopes[0]!.rankable
  expect(rankable(even)).toBe(true)
  expect(rankable({...even, visits: even.visits!.slice(1)})).toBe(false)
  expect(
    rankable({
      ...even,
      catch: [
        ...even.catch!,
        ...['c', 'd'].map((end) => ['W1', '2026-05-18', `Genus species${end}`, 1] as const)
      ]
    })
  ).toBe(false)
  expect(rankable(forest)).toBe(false)
})
