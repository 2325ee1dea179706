import fc from 'fast-check'
import {expect, test} from 'vitest'
import {countLogCountTable} from '../../src/statistics/count-log-count-table.ts'
import {expectedCountLogCount} from '../../src/statistics/expected-entropy.ts'

test('a table agrees with the sum it stands for, at every count and size', () => {
  fc.assert(
    fc.property(
      fc.integer({min: 50, max: 20_000}),
      fc.array(fc.double({min: 0, max: 1, noNaN: true}), {minLength: 1, maxLength: 4}),
      fc.array(fc.double({min: 0, max: 1, noNaN: true}), {minLength: 1, maxLength: 6}),
      (reference, shares, counts) => {
        const sizes = shares.map((share) => 1 + Math.floor(share * (reference - 2)))
        const table = countLogCountTable(reference, sizes)
        for (const share of counts) {
          const count = 1 + Math.floor(share * (reference - 1))
          const values = table(count)
          for (const [i, size] of sizes.entries()) {
            const exact = expectedCountLogCount(count, reference, size)
            expect(Math.abs(values[i]! - exact)).toBeLessThanOrEqual(1e-7 * exact + 1e-12)
          }
        }
      }
    ),
    {numRuns: 300}
  )
})

test('a count is the same whatever was asked for before', () => {
  const [one, other] = [countLogCountTable(5000, [100, 2500]), countLogCountTable(5000, [100, 2500])]
  for (const count of [3000, 60, 61, 900, 62]) one(count)
  expect(other(62)).toEqual(one(62))
})
