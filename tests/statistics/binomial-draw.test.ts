import {expect, test} from 'vitest'
import {binomialDraw} from '../../src/statistics/binomial-draw.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {chiSquareUpperTail, logGamma} from '../../src/statistics/special-functions.ts'

const DRAWS = 50_000

test.each([
  [5, 0.3],
  [40, 0.02],
  [12, 0.9],
  [100, 0.095],
  [25, 0.45],
  [1000, 0.02],
  [1000, 0.7],
  [1_000_000, 0.00003]
])('draws from %d trials of probability %d follow the binomial distribution', (n, p) => {
  const stream = randomStream(11, `binomial ${n} ${p}`)
  const seen = new Map<number, number>()
  for (let i = 0; i < DRAWS; i++) {
    const k = binomialDraw(stream, n, p)
    seen.set(k, (seen.get(k) ?? 0) + 1)
  }
  const chance = (k: number) =>
    Math.exp(
      logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1) + k * Math.log(p) + (n - k) * Math.log1p(-p)
    )
  // Values expected fewer than ten times are one class together.
  let statistic = 0
  let classes = 0
  let otherSeen = DRAWS
  let otherExpected = DRAWS
  const spread = 10 * Math.sqrt(n * p * (1 - p)) + 10
  for (let k = Math.max(0, Math.floor(n * p - spread)); k <= Math.min(n, n * p + spread); k++) {
    const expected = DRAWS * chance(k)
    if (expected < 10) continue
    const observed = seen.get(k) ?? 0
    statistic += (observed - expected) ** 2 / expected
    otherSeen -= observed
    otherExpected -= expected
    classes++
  }
  statistic += (otherSeen - otherExpected) ** 2 / Math.max(otherExpected, 1)
  expect(classes).toBeGreaterThan(3)
  expect(chiSquareUpperTail(statistic, classes)).toBeGreaterThan(0.001)
})

test('impossible, certain and absent trials need no draw', () => {
  const stream = randomStream(1, 'edge')
  expect(binomialDraw(stream, 10, 0)).toBe(0)
  expect(binomialDraw(stream, 10, 1)).toBe(10)
  expect(binomialDraw(stream, 0, 0.5)).toBe(0)
  expect(stream.uniform()).toBe(randomStream(1, 'edge').uniform())
})

test('a draw never leaves its range', () => {
  const stream = randomStream(5, 'range')
  for (let i = 0; i < 20_000; i++) {
    const n = 1 + stream.integer(200)
    const k = binomialDraw(stream, n, stream.uniform())
    expect(k >= 0 && k <= n && Number.isInteger(k)).toBe(true)
  }
})
