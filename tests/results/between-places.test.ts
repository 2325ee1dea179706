import {expect, test} from 'vitest'
import {madeStudy, twoHabitats} from './made-study.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

test('beta diversity is 1 between sites that are alike and their number where nothing is shared', () => {
  const {partitions} = tinyResults(
    madeStudy({
      alike: [
        [5, 5, 0, 0],
        [5, 5, 0, 0]
      ],
      apart: [
        [4, 4, 0, 0],
        [0, 0, 7, 7]
      ]
    })
  ).scopes[0]!
  expect(partitions.map(({id, label}) => [id, label])).toEqual([
    ['habitats', 'between habitats'],
    ['alike', 'between sites of alike'],
    ['apart', 'between sites of apart']
  ])
  for (const {alpha, beta, gamma} of partitions[1]!.orders) {
    expect([alpha, beta, gamma].map(numberOf)).toEqual([
      expect.closeTo(2, 9),
      expect.closeTo(1, 9),
      expect.closeTo(2, 9)
    ])
  }
  for (const {beta} of partitions[2]!.orders) expect(numberOf(beta)).toBeCloseTo(2, 9)
})

test('beta diversity of order 0 carries the caution that missed species inflate it', () => {
  const [between] = tinyResults(madeStudy(twoHabitats)).scopes[0]!.partitions
  const [richness] = between!.orders
  expect('caution' in richness!.beta && richness!.beta.caution).toContain('under-sampling inflates')
})

test('sites without catch are left out of a partition and named; one site is no partition', () => {
  const {partitions} = tinyResults(
    madeStudy({
      wood: [
        [3, 2],
        [0, 0]
      ]
    })
  ).scopes[0]!
  const within = partitions[1]!
  expect(within.leftOut).toEqual([
    {id: 'wood2', label: 'wood2', reason: 'nothing of the scope was caught there'}
  ])
  expect(numberOf(within.units)).toBe(1)
  expect(numberOf(within.orders[1]!.gamma)).toBe('there are fewer than two sites with catch')
})

test('dissimilarities of sites are those of their formulas', () => {
  // Shared 4, only in the first 1, only in the second 6 (Baselga 2010): 0.4667 = 0.2000 + 0.2667.
  const {sites} = tinyResults(
    madeStudy({
      wood: [
        [1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0],
        [1, 1, 1, 1, 0, 1, 1, 1, 1, 1, 1]
      ]
    })
  ).scopes[0]!.dissimilarities
  expect(sites.items.map(({id}) => id)).toEqual(['wood1', 'wood2'])
  expect(sites.sorensen).toEqual([[], [0.466667]])
  expect(sites.turnover[1]![0]).toBeCloseTo(0.2, 5)
  expect(sites.nestedness[1]![0]).toBeCloseTo(0.266667, 5)
  expect(sites.jaccard[1]![0]).toBeCloseTo(7 / 11, 5)
  // On presence and absence at equal effort Bray-Curtis is Sorensen.
  expect(sites.brayCurtis[1]![0]).toBeCloseTo(0.466667, 5)
  expect(numberOf(sites.multiple.sorensen)).toBeCloseTo(0.466667, 5)
  expect(numberOf(sites.multipleWithin[0]!.turnover)).toBeCloseTo(0.2, 9)
})

test('Bray-Curtis takes catch per trap-nights, so that unequal effort is not read as a difference', () => {
  const tiny = madeStudy(
    {
      wood: [
        [12, 14, 8],
        [6, 7, 4]
      ]
    },
    {rounds: 2}
  )
  const {brayCurtis} = tinyResults({...tiny, visits: tiny.visits!.slice(0, 3)}).scopes[0]!.dissimilarities
    .sites
  // The first site stood open for two rounds and caught twice as much.
  expect(brayCurtis[1]![0]).toBeCloseTo(0, 9)
})

test('mean dissimilarities within and between habitats are told apart', () => {
  const {sites, habitats} = tinyResults(madeStudy(twoHabitats)).scopes[0]!.dissimilarities
  expect(numberOf(sites.meanWithin)).toBeLessThan(numberOf(sites.meanBetween) as number)
  expect(numberOf(habitats.meanBetween)).toBeCloseTo(habitats.brayCurtis[1]![0]!, 5)
  expect(numberOf(habitats.meanWithin)).toContain('no habitat has two')
  expect(habitats.multipleWithin).toEqual([])
})

test('places without catch have no dissimilarity and are named', () => {
  const {sites} = tinyResults(
    madeStudy({
      wood: [
        [3, 1],
        [0, 0]
      ],
      meadow: [[1, 4]]
    })
  ).scopes[0]!.dissimilarities
  expect(sites.items.map(({id}) => id)).toEqual(['meadow1', 'wood1'])
  expect(sites.leftOut.map(({id}) => id)).toEqual(['wood2'])
  expect(sites.sorensen.map((row) => row.length)).toEqual([0, 1])
})
