import {expect, test} from 'vitest'
import {brayCurtis} from '../../src/statistics/bray-curtis.ts'
import {holm} from '../../src/statistics/holm.ts'
import {jaccard} from '../../src/statistics/jaccard.ts'
import {kruskalWallis} from '../../src/statistics/kruskal-wallis.ts'
import {sorensen} from '../../src/statistics/sorensen.ts'
import {turnoverNestedness} from '../../src/statistics/turnover-nestedness.ts'
import {disagreement, disagreements} from './disagreement.ts'
import {rateDisagreements} from './rate-disagreements.ts'
import {cases, paired, reference} from './reference-file.ts'

test('rates and their intervals are those of the second implementation', () => {
  const found = paired(cases.rates, reference.rates).flatMap(({id, input, figures}) =>
    rateDisagreements(id, input.catch, input.nights, figures)
  )
  expect(found).toEqual([])
})

test('dissimilarities of pairs, their turnover and nestedness, are those of the second implementation', () => {
  const found = paired(cases.pairs, reference.pairs).flatMap(({id, input: {a, b}, figures}) => {
    const parts = turnoverNestedness([a, b])
    return [
      ...disagreement(`${id} Bray-Curtis`, brayCurtis(a, b), figures.brayCurtis),
      ...disagreement(`${id} Sorensen`, sorensen(a, b), figures.sorensen),
      ...disagreement(`${id} Jaccard`, jaccard(a, b), figures.jaccard),
      ...disagreement(`${id} Sorensen of parts`, parts.sorensen, figures.sorensen),
      ...disagreement(`${id} turnover`, parts.turnover, figures.sorensenTurnover),
      ...disagreement(`${id} nestedness`, parts.nestedness, figures.sorensenNestedness)
    ]
  })
  expect(found).toEqual([])
})

test('Kruskal-Wallis statistics and their chi-square p are those of the second implementation', () => {
  const found = paired(cases.kruskalWallis, reference.kruskalWallis).flatMap(({id, input, figures}) => {
    const {statistic, degreesOfFreedom, chiSquareP} = kruskalWallis(
      input.groups.flat(),
      input.groups.flatMap((values, group) => values.map(() => group))
    )
    if (figures.df !== null) expect(degreesOfFreedom).toBe(figures.df)
    return [
      ...disagreement(`${id} H`, statistic, figures.h),
      ...disagreement(`${id} p`, chiSquareP, figures.pChiSquare)
    ]
  })
  expect(found).toEqual([])
})

test("Holm's adjusted p are those of the second implementation", () => {
  const found = paired(cases.holm, reference.holm).flatMap(({id, input, figures}) =>
    disagreements(id, holm(input.p), figures.adjusted)
  )
  expect(found).toEqual([])
})
