import type {Quantity} from '../model/quantity.ts'
import {expectedDiversity, type RarefiableOrder} from './expected-diversity.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'

/**
 * Hill number of order 0, 1 or 2, in effective species, that is expected of a sample of another size: smaller
 * (rarefied) or larger (extrapolated). Size is in individuals, or in sampling units for incidences.
 *
 * Formula: m the size, n the reference size, e = m - n; for incidences T for n, Y for X, U = sum Y.
 * q = 0 below n: sum 1 - choose(n-X, m) / choose(n, m); above: S + f0 [1 - (1 - f1/(n f0 + f1))^e].
 * q = 1 below n: exp of the entropy of the expected frequency counts; above: exp((n/m) H_observed + (e/m)
 * H_asymptotic), which is the 2014 form; a later one by discovery rates differs.
 * q = 2: 1 / [1/m + ((m-1)/m) sum X (X-1) / (n (n-1))]; incidences 1 / [T/(m U) + ((m-1)/m) sum Y (Y-1) /
 * (U^2 (1 - 1/T))].
 *
 * Source: Chao et al. 2014, Ecol. Monogr. 84:45-67, tables 1 and 2; q = 0 Colwell et al. 2012, J. Plant Ecol. 5:3-21.
 *
 * Edge cases: an empty sample has none; between whole sizes below n it is linear, and a size under 1 counts as 1;
 * q = 0 stops at twice the reference size; q = 2 needs n >= 2, at every size (its formula is 0/0 at n = 1), and above
 * n carries a caution where no species has a count above 1, because it then grows without bound. A size that is not
 * above 0 is our own bug: RangeError.
 *
 * @example rarefactionAndExtrapolation(frequencyCounts([2, 2]), 0, 2) // => {value: 1.6666667}
 * @example rarefactionAndExtrapolation(frequencyCounts([2, 1, 1]), 0, 8) // => {value: 4.0253906}
 * @example rarefactionAndExtrapolation(frequencyCounts([2, 2]), 2, 2) // => {value: 1.5}
 * @example rarefactionAndExtrapolation(frequencyCounts([1]), 2, 1) // => {notDefined: 'the reference size is one individual'}
 * @example rarefactionAndExtrapolation(frequencyCounts([2, 2]), 0, 9) // => {notDefined: 'richness is not extrapolated beyond twice the reference size'}
 */
export function rarefactionAndExtrapolation(
  sample: FrequencyCounts,
  order: RarefiableOrder,
  size: number
): Quantity {
  if (!(size > 0 && Number.isFinite(size))) throw new RangeError(`${size} is not a size of a sample`)
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  // A size that was solved for a coverage may miss the double by rounding.
  if (order === 0 && size > 2 * sample.size * (1 + 1e-9)) {
    return {notDefined: 'richness is not extrapolated beyond twice the reference size'}
  }
  if (order === 2 && sample.size < 2) {
    return {notDefined: `the reference size is one ${UNIT[sample.kind]}`}
  }
  const value = expectedDiversity(sample, order, size)
  const unbounded = order === 2 && size > sample.size && sample.singletons === sample.species
  return {value, ...(unbounded && {caution: UNBOUNDED[sample.kind]})}
}

const UNIT = {abundance: 'individual', incidence: 'sampling unit'} as const

const UNBOUNDED = {
  abundance: 'grows without bound, because no species was caught more than once',
  incidence: 'grows without bound, because no species was found in more than one sampling unit'
} as const
