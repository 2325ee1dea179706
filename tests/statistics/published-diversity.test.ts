import {expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {chao1} from '../../src/statistics/chao1.ts'
import {coverage} from '../../src/statistics/coverage.ts'
import {coverageAtSize} from '../../src/statistics/coverage-at-size.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {hillAsymptotic} from '../../src/statistics/hill-asymptotic.ts'
import {hillObserved} from '../../src/statistics/hill-observed.ts'
import {rarefactionAndExtrapolation} from '../../src/statistics/rarefaction-and-extrapolation.ts'
import {shannon} from '../../src/statistics/shannon.ts'
import {sizeForCoverage} from '../../src/statistics/size-for-coverage.ts'
import {numberOf} from './number-of.ts'
import {girdled, logged} from './spider-demonstration-set.ts'

const GIRDLED = frequencyCounts(girdled)
const LOGGED = frequencyCounts(logged)

// Values of Chao et al. 2014, Ecol. Monogr. 84:45-67, for its spider data [from memory].
test.each([
  [
    'girdled',
    GIRDLED,
    {n: 168, S: 26, chao: 43.893, se: 14.306, C: 0.92886, q: [12.06, 7.84], limit: [13.826, 8.175]}
  ],
  [
    'logged',
    LOGGED,
    {n: 252, S: 37, chao: 61.403, se: 18.532, C: 0.94457, q: [14.421, 6.761], limit: [16.337, 6.92]}
  ]
])('the %s spiders have their published diversity', (_, sample, published) => {
  expect(sample.size).toBe(published.n)
  expect(sample.species).toBe(published.S)
  expect(hillObserved(sample, 0)).toEqual({value: published.S})
  expect(numberOf(hillObserved(sample, 1))).toBeCloseTo(published.q[0]!, 3)
  expect(numberOf(hillObserved(sample, 2))).toBeCloseTo(published.q[1]!, 3)
  const richness = chao1(sample)
  expect(numberOf(richness)).toBeCloseTo(published.chao, 3)
  expect(isDefined(richness) && richness.standardError).toBeCloseTo(published.se, 3)
  expect(numberOf(coverage(sample))).toBeCloseTo(published.C, 5)
  const {q0, q1, q2} = hillAsymptotic(sample)
  expect(q0).toEqual(richness)
  expect(numberOf(q1)).toBeCloseTo(published.limit[0]!, 3)
  expect(numberOf(q2)).toBeCloseTo(published.limit[1]!, 3)
})

test.each([
  ['girdled', GIRDLED, 50, 15.0301], // computed from the same counts
  ['girdled', GIRDLED, 100, 20.4594], // computed from the same counts
  ['girdled', GIRDLED, 150, 24.6706], // computed from the same counts
  ['girdled', GIRDLED, 336, 34.7307], // computed from the same counts
  ['logged', LOGGED, 168, 31.7073], // Chao et al. 2014 [from memory]
  ['logged', LOGGED, 504, 47.6445] // Chao et al. 2014 [from memory]
])('the %s spiders have their expected richness at %o', (_, sample, size, richness) => {
  expect(numberOf(rarefactionAndExtrapolation(sample, 0, size))).toBeCloseTo(richness, 4)
})

test('order 1 of the girdled spiders at twice the size is that of the 2014 form', () => {
  // 12.913 computed from the same counts; the form by discovery rates would give 13.017.
  expect(numberOf(rarefactionAndExtrapolation(GIRDLED, 1, 336))).toBeCloseTo(12.913, 3)
})

test('logged spiders need 436.57 individuals for the coverage that girdled ones reach at twice their size', () => {
  // Computed from the same counts.
  const common = numberOf(coverageAtSize(GIRDLED, 336))
  expect(common).toBeCloseTo(0.96357, 5)
  const size = numberOf(sizeForCoverage(LOGGED, common))
  expect(size).toBeCloseTo(436.57, 2)
  expect(numberOf(coverageAtSize(LOGGED, size))).toBeCloseTo(common, 12)
})

test.each([
  [1, 0, 1],
  [2, 6931, 2],
  [3, 10986, 3],
  [4, 13863, 4]
])(
  '%d equally common species have a Shannon entropy of %d ten-thousandths and %d effective species',
  (species, tenThousandths, effective) => {
    // By definition: H = ln S.
    const sample = frequencyCounts(new Array<number>(species).fill(10))
    expect(numberOf(shannon(sample))).toBeCloseTo(tenThousandths / 10_000, 4)
    expect(numberOf(hillObserved(sample, 1))).toBeCloseTo(effective, 12)
  }
)
