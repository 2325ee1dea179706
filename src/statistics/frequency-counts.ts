/** How many species have the same count. */
export interface FrequencyClass {
  /** Individuals of the species, or sampling units that hold it; from 1 on. */
  readonly count: number
  /** Species with this count. */
  readonly species: number
}

interface ReferenceSample {
  /** Reference size: n individuals, or T sampling units. */
  readonly size: number
  /** Records: n individuals, or U incidences (the sum of the counts). */
  readonly records: number
  /** S, the species seen. */
  readonly species: number
  /** Species with count 1: singletons f1, or uniques Q1. */
  readonly singletons: number
  /** Species with count 2: doubletons f2, or duplicates Q2. */
  readonly doubletons: number
  /** Distinct counts in ascending order. */
  readonly classes: readonly FrequencyClass[]
}

/** Individuals by species; size and records are both n. */
export interface AbundanceCounts extends ReferenceSample {
  readonly kind: 'abundance'
}

/** Sampling units by species. */
export interface IncidenceCounts extends ReferenceSample {
  readonly kind: 'incidence'
}

/** What diversity statistics are computed from: it forgets which species is which. */
export type FrequencyCounts = AbundanceCounts | IncidenceCounts

/**
 * Frequency counts of a catch: n individuals, S species, f1 singletons, f2 doubletons, and the distinct counts.
 *
 * Formula: n = sum X_i; S = number of X_i > 0; f_k = number of X_i equal to k.
 *
 * Source: notation of Chao et al. 2014, Ecol. Monogr. 84:45-67.
 *
 * Edge cases: zeros are species never caught and change nothing; a count that is negative or not whole is our own
 * bug and throws a RangeError.
 *
 * @example frequencyCounts([3, 0, 1, 1]).species // => 3
 * @example frequencyCounts([3, 0, 1, 1]).singletons // => 2
 * @example frequencyCounts([3, 0, 1, 1]).classes // => [{count: 1, species: 2}, {count: 3, species: 1}]
 */
export function frequencyCounts(counts: readonly number[]): AbundanceCounts {
  const {records, species, singletons, doubletons, classes} = summary(counts)
  return {kind: 'abundance', size: records, records, species, singletons, doubletons, classes}
}

/**
 * Frequency counts of occurrences: in how many of the sampling units each species was found.
 *
 * Formula: T = units; U = sum Y_i; S = number of Y_i > 0; Q_k = number of Y_i equal to k.
 *
 * Source: notation of Colwell et al. 2012, J. Plant Ecol. 5:3-21.
 *
 * Edge cases: zeros change nothing; a species in more units than there are throws a RangeError. Units without any
 * species count in T.
 *
 * @example incidenceCounts([2, 1, 1], 4).records // => 4
 * @example incidenceCounts([2, 1, 1], 4).size // => 4
 */
export function incidenceCounts(unitsBySpecies: readonly number[], units: number): IncidenceCounts {
  const {records, species, singletons, doubletons, classes} = summary(unitsBySpecies)
  const most = classes.at(-1)?.count ?? 0
  if (!Number.isSafeInteger(units) || most > units) {
    throw new RangeError(`a species in ${most} of ${units} sampling units`)
  }
  return {kind: 'incidence', size: units, records, species, singletons, doubletons, classes}
}

/** Why a sample without records has no diversity. */
export function emptyReason(kind: FrequencyCounts['kind']): string {
  return kind === 'abundance' ? 'no individuals were caught' : 'no species was found in any sampling unit'
}

/** All that a sample tells, in one pass: a bootstrap draws thousands of samples. */
function summary(counts: readonly number[]) {
  for (const count of counts) {
    if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`${count} is not a count`)
  }
  const rising = new Float64Array(counts).sort()
  const classes: FrequencyClass[] = []
  let [records, species, singletons, doubletons] = [0, 0, 0, 0]
  for (let start = 0; start < rising.length; ) {
    const count = rising[start]!
    let end = start + 1
    while (rising[end] === count) end++
    const alike = end - start
    start = end
    if (count === 0) continue
    classes.push({count, species: alike})
    records += count * alike
    species += alike
    if (count === 1) singletons = alike
    if (count === 2) doubletons = alike
  }
  return {records, species, singletons, doubletons, classes}
}
