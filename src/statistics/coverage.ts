import type {Quantity} from '../model/quantity.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'
import {singletonProbability} from './singleton-probability.ts'

/**
 * Sample coverage: the share of the individuals of the assemblage (of its incidences) that belong to species seen,
 * 0 to 1.
 *
 * Formula: 1 - (f1/n) (1 - A), A = 2 f2 / ((n-1) f1 + 2 f2), or 2 / ((n-1)(f1-1) + 2) where f2 = 0. Incidences:
 * divide by U, count with T.
 *
 * Source: Chao & Jost 2012, Ecology 93:2533-2547; incidences Chao et al. 2014, Ecol. Monogr. 84:45-67.
 *
 * Edge cases: not defined for an empty sample, for a reference size of 1, and where every species was met once only,
 * where the formula gives 1 or a number that says nothing. Without singletons it is 1.
 *
 * @example coverage(frequencyCounts([4, 2, 1, 1])) // => {value: 0.78125}
 * @example coverage(frequencyCounts([1])) // => {notDefined: 'one individual says nothing about the species that were missed'}
 * @example coverage(frequencyCounts([1, 1, 1])) // => {notDefined: 'every species was caught only once'}
 */
export function coverage(sample: FrequencyCounts): Quantity {
  const reason = coverageNotDefined(sample)
  return reason === undefined ? {value: estimatedCoverage(sample)} : {notDefined: reason}
}

/** Why this sample says nothing about its coverage; absent where it does. */
export function coverageNotDefined({kind, records, singletons, size, species}: FrequencyCounts) {
  if (records === 0) return emptyReason(kind)
  if (size === 1) return `one ${UNIT[kind]} says nothing about the species that were missed`
  if (singletons === species) return ONCE[kind]
  return undefined
}

/** The formula, for every sample that is not empty. */
export function estimatedCoverage(sample: FrequencyCounts): number {
  return 1 - (sample.singletons / sample.records) * (1 - singletonProbability(sample))
}

const UNIT = {abundance: 'individual', incidence: 'sampling unit'} as const

const ONCE = {
  abundance: 'every species was caught only once',
  incidence: 'every species was found in only one sampling unit'
} as const
