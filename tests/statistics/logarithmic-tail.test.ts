import {expect, test} from 'vitest'
import {logarithmicTail} from '../../src/statistics/logarithmic-tail.ts'

const relative = (a: number, b: number) => Math.abs(a / b - 1)

/** Summed from the small end, far enough for full precision. */
function direct(gap: number, start: number): number {
  const terms = Math.ceil(45 / gap)
  const rate = -Math.log1p(-gap)
  let sum = 0
  for (let k = terms; k >= 1; k--) sum += Math.exp(-rate * k) / (start + k)
  return sum
}

test.each([0.9, 0.5, 0.1, 0.03, 0.01, 1e-3, 1e-6, 1e-12])(
  'from 0 the tail at 1 - %o is the logarithm',
  (gap) => {
    expect(relative(logarithmicTail(gap, 0), -Math.log(gap))).toBeLessThan(1e-14)
  }
)

test.each([0.5, 0.01, 1e-4, 1e-9])(
  'from 1 the tail at 1 - %o is the logarithm less its first term',
  (gap) => {
    const x = 1 - gap
    expect(relative(logarithmicTail(gap, 1), (-Math.log(gap) - x) / x)).toBeLessThan(1e-13)
  }
)

test.each([
  [0.3, 10],
  [0.02, 100],
  [0.005, 5000],
  [1e-4, 30],
  [1e-5, 251],
  [1e-5, 1_000_000]
])('the tail at 1 - %o from %o agrees with direct summation', (gap, start) => {
  expect(relative(logarithmicTail(gap, start), direct(gap, start))).toBeLessThan(1e-12)
})

test('the tail is nothing where nothing is missing', () => {
  expect(logarithmicTail(1, 167)).toBe(0)
})
