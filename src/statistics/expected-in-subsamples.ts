import {absenceProbabilities} from './absence-probability.ts'
import {expectedCountLogCount} from './expected-entropy.ts'
import type {FrequencyCounts} from './frequency-counts.ts'

/** What is expected of a subsample of one size, smaller than the sample. */
export interface ExpectedInSubsample {
  readonly coverage: number
  /** Species. */
  readonly richness: number
  /** Shannon entropy in nats, that of the expected frequency counts. */
  readonly entropy: number
}

/** Numbers that a table may hold: 32 MB. */
const MOST = 4e6

/**
 * Coverage, species and entropy expected at those of the sizes that are whole numbers from 1 to the reference size
 * less one, for many samples of one reference size; undefined at the other sizes.
 *
 * Formula: those of expectedCoverage, expectedDiversity and expectedEntropy, to the last bit. What a species adds
 * depends on its count alone, and the replicates of a bootstrap have the same counts over and over: each is worked
 * out once.
 *
 * Source: as those three name it (Chao & Jost 2012; Chao et al. 2014).
 *
 * Edge cases: a sample of another reference size starts the table anew; an empty sample is our own bug.
 *
 * @example expectedInSubsamples([2, 4])(frequencyCounts([2, 2]))[0].richness.toFixed(6) // => '1.666667'
 * @example expectedInSubsamples([4])(frequencyCounts([2, 2]))[0] // => undefined
 */
export function expectedInSubsamples(
  sizes: readonly number[]
): (sample: FrequencyCounts) => (ExpectedInSubsample | undefined)[] {
  let below: readonly BelowReference[] = []
  let reference = Number.NaN
  const table = new Map<number, Float64Array>()
  return (sample) => {
    if (sample.size !== reference) {
      reference = sample.size
      below = sizes
        .filter((size) => Number.isInteger(size) && size >= 1 && size < reference)
        .map((size) => ({
          size,
          absence: absenceProbabilities(reference, size),
          absenceInRest: absenceProbabilities(reference - 1, size)
        }))
      table.clear()
    }
    if (table.size * 3 * below.length > MOST) table.clear()
    const sums = new Float64Array(3 * below.length)
    for (const {count, species} of sample.classes) {
      let own = table.get(count)
      if (own === undefined) {
        own = partsOf(count, reference, below)
        table.set(count, own)
      }
      const weight = (species * count) / sample.records
      for (let i = 0; i < sums.length; i += 3) {
        sums[i]! += weight * own[i]!
        sums[i + 1]! += species * (1 - own[i + 1]!)
        sums[i + 2]! += species * own[i + 2]!
      }
    }
    let next = 0
    return sizes.map((size) => {
      if (size !== below[next]?.size) return undefined
      const i = 3 * next++
      const records = (size * sample.records) / reference
      return {
        coverage: 1 - sums[i]!,
        richness: sums[i + 1]!,
        entropy: Math.log(records) - sums[i + 2]! / records
      }
    })
  }
}

interface BelowReference {
  readonly size: number
  /** Chance that a species of so many records is missed, among all records and among all but one. */
  readonly absence: (count: number) => number
  readonly absenceInRest: (count: number) => number
}

/** Size after size: the chance that a record of the species is the first of it, that it is missed; E[K ln K]. */
function partsOf(count: number, reference: number, sizes: readonly BelowReference[]): Float64Array {
  const parts = new Float64Array(3 * sizes.length)
  for (const [i, {size, absence, absenceInRest}] of sizes.entries()) {
    parts[3 * i] = absenceInRest(count - 1)
    parts[3 * i + 1] = absence(count)
    parts[3 * i + 2] = expectedCountLogCount(count, reference, size)
  }
  return parts
}
