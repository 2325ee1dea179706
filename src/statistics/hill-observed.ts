import type {Quantity} from '../model/quantity.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'

/**
 * Hill number of any order as observed, in effective species: the number of equally common species that would
 * give the same diversity.
 *
 * Formula: (sum p^q)^(1/(1-q)); q = 1 is the limit exp(-sum p ln p); q = 0 is S; q infinite is 1/max p. p is the
 * share of individuals, or of incidences.
 *
 * Source: Hill 1973, Ecology 54:427-432; for incidences Chao et al. 2014, Ecol. Monogr. 84:45-67.
 *
 * Edge cases: an empty sample has no Hill number; one species has 1 at every order. A negative order is our own bug
 * and throws a RangeError.
 *
 * @example hillObserved(frequencyCounts([5, 5, 5, 5]), 1) // => {value: 4}
 * @example hillObserved(frequencyCounts([6, 2, 2]), 2) // => {value: 2.2727273}
 * @example hillObserved(frequencyCounts([]), 0) // => {notDefined: 'no individuals were caught'}
 */
export function hillObserved(sample: FrequencyCounts, order: number): Quantity {
  if (!(order >= 0)) throw new RangeError(`${order} is not an order of diversity`)
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  return {value: hillNumber(sample, order)}
}

/** The Hill number of a sample that is not empty. */
export function hillNumber(sample: FrequencyCounts, order: number): number {
  const {classes, records, species} = sample
  if (order === 0) return species
  if (order === Number.POSITIVE_INFINITY) return records / classes.at(-1)!.count
  if (order === 1) return Math.exp(observedEntropy(sample))
  let sum = 0
  if (Math.abs(order - 1) > 0.1) {
    // Relative to the commonest species, so that no power underflows at a high order.
    const most = classes.at(-1)!.count
    for (const {count, species: n} of classes) sum += n * (count / most) ** order
    return (most / records) ** (order / (1 - order)) * sum ** (1 / (1 - order))
  }
  // Near 1 written as 1 + sum p (p^(q-1) - 1), which keeps its digits.
  for (const {count, species: n} of classes) {
    const share = count / records
    sum += n * share * Math.expm1((order - 1) * Math.log(share))
  }
  return Math.exp(Math.log1p(sum) / (1 - order))
}

/** Shannon entropy in natural units of a sample that is not empty. */
export function observedEntropy({classes, records}: FrequencyCounts): number {
  let entropy = 0
  for (const {count, species} of classes) {
    const share = count / records
    entropy -= species * share * Math.log(share)
  }
  // One species gives minus zero.
  return Math.max(entropy, 0)
}
