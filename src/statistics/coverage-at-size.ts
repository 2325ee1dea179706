import type {Quantity} from '../model/quantity.ts'
import {absenceProbabilities} from './absence-probability.ts'
import {coverageNotDefined, estimatedCoverage} from './coverage.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {singletonProbability} from './singleton-probability.ts'

/**
 * Expected sample coverage, 0 to 1, of a sample of another size, in individuals, or in sampling units for incidences.
 *
 * Formula: below n 1 - sum (X/n) choose(n-X, m) / choose(n-1, m); at n the estimator of coverage (the sum would give
 * 1); above 1 - (f1/n) (1-A)^(m-n+1). Incidences: divide by U, count with T.
 *
 * Source: Chao & Jost 2012, Ecology 93:2533-2547, equation 12 and table 1.
 *
 * Edge cases: not defined where coverage is not; linear between whole sizes up to n; 0 at size 0. It jumps at n:
 * n - 1 has 1 - f1/n, and the estimator at n is larger than the step before would suggest. A negative size is our own
 * bug: RangeError.
 *
 * @example coverageAtSize(frequencyCounts([4, 2, 1, 1]), 7) // => {value: 0.75}
 * @example coverageAtSize(frequencyCounts([4, 2, 1, 1]), 8) // => {value: 0.78125}
 * @example coverageAtSize(frequencyCounts([4, 2, 1, 1]), 9) // => {value: 0.80859375}
 * @example coverageAtSize(frequencyCounts([1, 1]), 1) // => {notDefined: 'every species was caught only once'}
 */
export function coverageAtSize(sample: FrequencyCounts, size: number): Quantity {
  if (!(size >= 0)) throw new RangeError(`${size} is not a size of a sample`)
  const reason = coverageNotDefined(sample)
  return reason === undefined ? {value: expectedCoverage(sample, size)} : {notDefined: reason}
}

/** The formulas, for every sample that is not empty. */
export function expectedCoverage(sample: FrequencyCounts, size: number): number {
  if (size > sample.size) {
    const {records, singletons} = sample
    return 1 - (singletons / records) * (1 - singletonProbability(sample)) ** (size - sample.size + 1)
  }
  const whole = Math.floor(size)
  const below = coverageAtWholeSize(sample, whole)
  return size > whole ? below + (size - whole) * (coverageAtWholeSize(sample, whole + 1) - below) : below
}

function coverageAtWholeSize(sample: FrequencyCounts, m: number): number {
  if (m === 0) return 0
  if (m === sample.size) return estimatedCoverage(sample)
  const absence = absenceProbabilities(sample.size - 1, m)
  let missed = 0
  for (const {count, species} of sample.classes) {
    missed += ((species * count) / sample.records) * absence(count - 1)
  }
  return 1 - missed
}
