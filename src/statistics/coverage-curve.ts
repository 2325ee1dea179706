import {estimatedCoverage} from './coverage.ts'
import {expectedDiversity} from './expected-diversity.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {expectedSize} from './size-for-coverage.ts'

/**
 * Diversity of orders 0, 1 and 2 at several coverages, coverage after coverage, read off a curve that is already
 * there: what a bootstrap replicate must yield for the band of a curve over coverage.
 *
 * Formula: up to the coverage of the sample linear between the points of its curve; beyond it the closed forms of
 * expectedDiversity at expectedSize, however far. `curve` is curveStatistics of the sample at `sizes`, which rise
 * and hold the reference size.
 *
 * Source: Chao & Jost 2012, Ecology 93:2533-2547; Chao et al. 2014, Ecol. Monogr. 84:45-67. Reading between points
 * instead of solving for each size: common practice, no source. It moves all replicates alike and hardly their spread.
 *
 * Edge cases: a coverage below that of the first point has the diversities of that point.
 *
 * @example diversityAlongCoverage(frequencyCounts([4, 2, 1, 1]), [1, 8], curveStatistics([1, 8])(frequencyCounts([4, 2, 1, 1])), [0.78125])[0] // => 4
 */
export function diversityAlongCoverage(
  sample: FrequencyCounts,
  sizes: readonly number[],
  curve: ArrayLike<number>,
  coverages: readonly number[]
): number[] {
  const reached = estimatedCoverage(sample)
  const last = sizes.findLastIndex((size) => size <= sample.size)
  const row = new Array<number>(3 * coverages.length)
  let at = 0
  let above = 0
  let before = 0
  for (const coverage of coverages) {
    if (coverage >= reached) {
      const size = expectedSize(sample, coverage)
      row[at++] = expectedDiversity(sample, 0, size)
      row[at++] = expectedDiversity(sample, 1, size)
      row[at++] = expectedDiversity(sample, 2, size)
      continue
    }
    // Coverages mostly rise, and then the search goes on where it ended.
    if (coverage < before) above = 0
    before = coverage
    while (above < last && curve[4 * above]! <= coverage) above += 1
    const below = Math.max(0, above - 1)
    const width = curve[4 * above]! - curve[4 * below]!
    const along = width > 0 ? Math.max(0, (coverage - curve[4 * below]!) / width) : 0
    for (let column = 1; column <= 3; column++) {
      const low = curve[4 * below + column]!
      row[at++] = low + along * (curve[4 * above + column]! - low)
    }
  }
  return row
}
