import {absenceProbabilities} from './absence-probability.ts'
import {countLogCountTable} from './count-log-count-table.ts'
import type {FrequencyClass, FrequencyCounts} from './frequency-counts.ts'

/** Numbers that a table may hold: 32 MB. */
const MOST = 4e6

/**
 * Coverage, species and Shannon entropy (nats) expected at those of the sizes that are whole numbers from 1 to the
 * reference size less one, for many samples of one reference size: three numbers a size, NaN at the other sizes.
 *
 * Formula: those of expectedCoverage, expectedDiversity and, by countLogCountTable, expectedEntropy. What a species adds depends on its count
 * alone, and the replicates of a bootstrap have the same counts over and over: each is worked out once, and a
 * replicate adds up rows of a table.
 *
 * Source: as those three name it (Chao & Jost 2012; Chao et al. 2014).
 *
 * Edge cases: a sample of another reference size starts the table anew; an empty sample is our own bug.
 *
 * @example expectedInSubsamples([2, 4])(frequencyCounts([2, 2]))[1].toFixed(6) // => '1.666667'
 * @example expectedInSubsamples([4])(frequencyCounts([2, 2]))[0] // => NaN
 */
export function expectedInSubsamples(sizes: readonly number[]): (sample: FrequencyCounts) => Float64Array {
  let below: readonly BelowReference[] = []
  let reference = Number.NaN
  let countLogCount: ReturnType<typeof countLogCountTable> = () => new Float64Array(0)
  const table = new Map<number, Float64Array>()
  return (sample) => {
    const {classes, records} = sample
    if (sample.size !== reference) {
      reference = sample.size
      below = belowReference(sizes, reference)
      countLogCount = countLogCountTable(
        reference,
        below.map(({size}) => size)
      )
      table.clear()
    }
    if (table.size * 3 * below.length > MOST) table.clear()
    const partsFor = (count: number): Float64Array => {
      const known = table.get(count) ?? partsOf(count, below, countLogCount(count))
      table.set(count, known)
      return known
    }
    const sums = new Float64Array(3 * below.length)
    // Two counts at a time: the innermost loop of a bootstrap, where half of the time goes into keeping the sums.
    for (let at = 0; at < classes.length; at += 2) {
      const {count, species} = classes[at]!
      const next = classes[at + 1] ?? nothing
      addParts(sums, species, partsFor(count), next.species, partsFor(next.count))
    }
    const expected = new Float64Array(3 * sizes.length).fill(Number.NaN)
    for (const [i, {size, place}] of below.entries()) {
      const recordsThere = (size * records) / reference
      expected[3 * place] = 1 - sums[3 * i]! / records
      expected[3 * place + 1] = sums[3 * i + 1]!
      expected[3 * place + 2] = Math.log(recordsThere) - sums[3 * i + 2]! / recordsThere
    }
    return expected
  }
}

interface BelowReference {
  readonly size: number
  /** Its place among the sizes. */
  readonly place: number
  /** Chance that a species of so many records is missed, among all records and among all but one. */
  readonly absence: (count: number) => number
  readonly absenceInRest: (count: number) => number
}

/** A count that adds nothing. */
const nothing: FrequencyClass = {count: 1, species: 0}

function addParts(
  sums: Float64Array,
  weight: number,
  parts: Float64Array,
  weight2: number,
  parts2: Float64Array
): void {
  for (let i = 0; i < sums.length; i++) sums[i] = sums[i]! + weight * parts[i]! + weight2 * parts2[i]!
}

function belowReference(sizes: readonly number[], reference: number): readonly BelowReference[] {
  return sizes.flatMap((size, place) =>
    Number.isInteger(size) && size >= 1 && size < reference
      ? {
          size,
          place,
          absence: absenceProbabilities(reference, size),
          absenceInRest: absenceProbabilities(reference - 1, size)
        }
      : []
  )
}

/** Size after size: records of the species that would be the first of it; the chance that it is met; E[K ln K]. */
function partsOf(count: number, sizes: readonly BelowReference[], countLogCount: Float64Array): Float64Array {
  const parts = new Float64Array(3 * sizes.length)
  for (const [i, {absence, absenceInRest}] of sizes.entries()) {
    parts[3 * i] = count * absenceInRest(count - 1)
    parts[3 * i + 1] = 1 - absence(count)
    parts[3 * i + 2] = countLogCount[i]!
  }
  return parts
}
