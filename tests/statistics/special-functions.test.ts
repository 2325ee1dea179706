import {expect, test} from 'vitest'
import {
  betaCdf,
  chiSquareUpperTail,
  digamma,
  logGamma,
  normalQuantile,
  scaledExponentialIntegral,
  studentCdf,
  studentQuantile,
  trigamma
} from '../../src/statistics/special-functions.ts'

// Tables: Abramowitz & Stegun 1964, Handbook of Mathematical Functions, unless another source is named.

test.each([
  [0.975, 1.95996],
  [0.995, 2.57583],
  [0.9, 1.28155],
  [0.5, 0],
  [0.025, -1.95996]
])('the normal quantile of %d is %d (table 26.5)', (p, z) => {
  expect(normalQuantile(p)).toBeCloseTo(z, 5)
})

test.each([
  [1, 0.975, 12.706],
  [2, 0.975, 4.303],
  [4, 0.975, 2.776],
  [10, 0.975, 2.228],
  [30, 0.995, 2.75],
  [120, 0.95, 1.658]
])('Student t with %d degrees of freedom has the %d quantile %d (table 26.10)', (df, p, t) => {
  expect(studentQuantile(p, df)).toBeCloseTo(t, 3)
  expect(studentCdf(studentQuantile(p, df), df)).toBeCloseTo(p, 12)
})

test('Student t at 10 degrees of freedom agrees with the closed form to full precision', () => {
  // Solved from the elementary form of the distribution at even degrees of freedom with 40 digits.
  expect(Math.abs(studentQuantile(0.975, 10) - 2.228138851986275)).toBeLessThan(2e-15)
})

test('fractions of a degree of freedom are refused, not cut off', () => {
  expect(() => studentQuantile(0.975, 2.5)).toThrow(RangeError)
  expect(() => studentCdf(1, 0)).toThrow(RangeError)
})

test.each([
  [1, 3.84146, 0.05],
  [2, 5.99147, 0.05],
  [10, 18.307, 0.05],
  [30, 50.8922, 0.01],
  [1, 6.6349, 0.01]
])('chi-square with %d degrees of freedom exceeds %d with probability %d (table 26.8)', (df, x, tail) => {
  expect(chiSquareUpperTail(x, df)).toBeCloseTo(tail, 5)
})

test('the upper tail of chi-square goes from 1 at zero to 0 where a double cannot hold it', () => {
  expect(chiSquareUpperTail(0, 3)).toBe(1)
  expect(chiSquareUpperTail(1e5, 3)).toBe(0)
  expect(chiSquareUpperTail(1380, 2)).toBeCloseTo(Math.exp(-690), 310)
})

test('the beta distribution with whole parameters is a binomial tail', () => {
  // P(Beta(2, 3) <= 0.4) = P(at least 2 of 4 at 0.4) = 0.5248.
  expect(betaCdf(0.4, 2, 3)).toBeCloseTo(0.5248, 12)
  expect(betaCdf(0.3, 1, 1)).toBeCloseTo(0.3, 15)
})

test('the gamma function and its derivatives have their tabulated values', () => {
  expect(Math.exp(logGamma(1.5))).toBeCloseTo(0.8862269255, 10) // table 6.1
  expect(digamma(1)).toBeCloseTo(-0.5772156649, 10) // table 6.1
  expect(trigamma(1)).toBeCloseTo(1.6449340668, 10) // table 6.1
  expect(digamma(2.5)).toBeCloseTo(digamma(1.5) + 1 / 1.5, 14)
  expect(trigamma(2.5)).toBeCloseTo(trigamma(1.5) - 1 / 2.25, 14)
})

test('the scaled exponential integral has its tabulated values and no break', () => {
  expect(10 * scaledExponentialIntegral(10)).toBeCloseTo(0.915633339, 9) // table 5.2: x exp(x) E1(x) at x = 10
  expect(scaledExponentialIntegral(1) / Math.E).toBeCloseTo(0.219383934, 9) // table 5.1
  const below = scaledExponentialIntegral(500) * 500
  const above = scaledExponentialIntegral(500 + 1e-9) * (500 + 1e-9)
  expect(Math.abs(below - above)).toBeLessThan(1e-13)
})
