import {expect, test} from 'vitest'
import {bootstrapReplicates} from '../../src/statistics/bootstrap-replicates.ts'
import {bootstrapStandardErrors} from '../../src/statistics/bootstrap-standard-errors.ts'
import {diversityAlongCoverage} from '../../src/statistics/coverage-curve.ts'
import {curveSizes} from '../../src/statistics/curve-sizes.ts'
import {coverageStatistics} from '../../src/statistics/diversity-at-coverage.ts'
import {curveStatistics} from '../../src/statistics/diversity-curve.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'

/** Spiders of girdled hemlock plots (Chao et al. 2014, from memory). */
const girdled = [46, 22, 17, 15, 15, 9, 8, 6, 6, 4, 2, 2, 2, 2, ...Array<number>(12).fill(1)]

test('beyond the coverage of the sample diversity is that of the size solved for', () => {
  const sample = frequencyCounts(girdled)
  const sizes = curveSizes(sample.size, 16)
  const along = diversityAlongCoverage(sample, sizes, curveStatistics(sizes)(sample), [0.94, 0.96])
  const solved = [0.94, 0.96].flatMap((coverage) => coverageStatistics(coverage)(sample))
  for (const [index, value] of along.entries()) expect(value).toBeCloseTo(solved[index]!, 9)
})

test('within the sample it lies near it, and below the first point it is that of one individual', () => {
  const sample = frequencyCounts(girdled)
  const sizes = curveSizes(sample.size, 60)
  const along = diversityAlongCoverage(sample, sizes, curveStatistics(sizes)(sample), [0.0001, 0.5, 0.9])
  for (const value of along.slice(0, 3)) expect(value).toBeCloseTo(1, 12)
  const solved = [0.5, 0.9].flatMap((coverage) => coverageStatistics(coverage)(sample))
  for (const [index, value] of along.slice(3).entries()) {
    expect(Math.abs(value / solved[index]! - 1)).toBeLessThan(0.03)
  }
})

test('standard errors read off the curve are near those solved for every replicate', () => {
  const sample = frequencyCounts(girdled)
  const sizes = curveSizes(sample.size, 16)
  const coverages = [0.7, 0.9, 0.95]
  const along = curveStatistics(sizes)
  const read = bootstrapStandardErrors(
    bootstrapReplicates(sample, randomStream(1, 'read'), 0, 300, (drawn) =>
      diversityAlongCoverage(drawn, sizes, along(drawn), coverages)
    ),
    9
  )
  for (const [index, coverage] of coverages.entries()) {
    const solved = bootstrapStandardErrors(
      bootstrapReplicates(sample, randomStream(1, 'read'), 0, 300, coverageStatistics(coverage)),
      3
    )
    for (const order of [0, 1, 2]) {
      expect(read[3 * index + order]! / solved[order]!).toBeGreaterThan(0.9)
      expect(read[3 * index + order]! / solved[order]!).toBeLessThan(1.1)
    }
  }
})
