import {expect, test} from 'vitest'
import {absenceProbability} from '../../src/statistics/absence-probability.ts'
import {expectedCoverage} from '../../src/statistics/coverage-at-size.ts'
import {curveSizes} from '../../src/statistics/curve-sizes.ts'
import {expectedDiversity} from '../../src/statistics/expected-diversity.ts'
import {expectedEntropy} from '../../src/statistics/expected-entropy.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {estimatedEntropy} from '../../src/statistics/shannon-asymptotic.ts'
import {choose, ratio} from './exact-rarefaction.ts'

// A million individuals of 300 species, common to rare.
const shares = Array.from({length: 300}, (_, i) => Math.exp(-i / 22))
const total = shares.reduce((sum, share) => sum + share)
const rest = shares.slice(1).map((share) => Math.max(1, Math.round((share / total) * 1e6)))
const counts = [1_000_000 - rest.reduce((sum, count) => sum + count), ...rest]
const sample = frequencyCounts(counts)

test('a curve of sixty points and three orders takes under half a second at n = 1e6', () => {
  expect(sample.size).toBe(1_000_000)
  const start = performance.now()
  const points = curveSizes(sample.size).map((size) =>
    ([0, 1, 2] as const).map((order) => expectedDiversity(sample, order, size))
  )
  expect(performance.now() - start).toBeLessThan(500)
  expect(points.flat().every(Number.isFinite)).toBe(true)
})

test.each([
  [1, 400_000],
  [7, 999_990],
  [300, 1000],
  [2000, 20_000],
  [40, 40]
])('the probability of missing %d of 1e6 in a draw of %d keeps its digits', (x, m) => {
  // choose(n-x, m) / choose(n, m) = choose(n-m, x) / choose(n, x), in whole numbers.
  const exact = ratio(choose(1_000_000 - m, x), choose(1_000_000, x))
  expect(Math.abs(absenceProbability(1_000_000, x, m) - exact)).toBeLessThan(1e-13)
})

test('order 1 at one individual less than 1e6 is that of leaving each out in turn', () => {
  const n = sample.size
  const m = n - 1
  const kLogK = (k: number) => (k > 0 ? k * Math.log(k) : 0)
  const expected = counts.reduce((sum, x) => sum + (x / n) * kLogK(x - 1) + (1 - x / n) * kLogK(x), 0)
  expect(expectedEntropy(sample, m)).toBeCloseTo(Math.log(m) - expected / m, 12)
})

test('order 1 at two of 1e6 individuals is that of a pair', () => {
  const n = sample.size
  const alike = counts.reduce((sum, x) => sum + (x * (x - 1)) / (n * (n - 1)), 0)
  // f_2 = alike, f_1 = 2 (1 - alike): entropy is f_1 (1/2) ln 2.
  expect(expectedEntropy(sample, 2)).toBeCloseTo((1 - alike) * Math.LN2, 13)
})

test('coverage just below 1e6 is one minus the share of singletons', () => {
  expect(expectedCoverage(sample, sample.size - 1)).toBeCloseTo(1 - sample.singletons / sample.size, 14)
})

test('the entropy estimate of 1e6 singletons is finite and that of 1e6 even individuals is the logarithm', () => {
  const even = frequencyCounts(new Array<number>(100).fill(10_000))
  // Bias of the observed entropy is (S - 1)/(2n) (Basharin 1959, Theory Probab. Appl. 4:333-336).
  expect(estimatedEntropy(even)).toBeCloseTo(Math.log(100) + 99 / 2e6, 7)
  expect(estimatedEntropy(frequencyCounts(new Array<number>(1_000_000).fill(1)))).toBeGreaterThan(
    Math.log(1e6)
  )
})
