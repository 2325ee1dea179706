import type {Quantity} from '../model/quantity.ts'
import {logNormalAboveSeen} from './confidence-interval.ts'
import {emptyReason, incidenceCounts} from './frequency-counts.ts'
import {infrequentEstimate, onlySingletons} from './infrequent-estimate.ts'

/**
 * ICE, the incidence-based coverage estimator of the number of species, with standard error and log-normal interval.
 * It takes the units themselves, one row a sampling unit and one column a species, because it asks which units hold
 * an infrequent species.
 *
 * Formula: S_frequent + S_infrequent/C + (Q1/C) g, infrequent species being in at most 10 units, N incidences
 * together, m units holding any of them; C = 1 - Q1/N;
 * g = max(0, (S_infrequent/C) (m/(m-1)) sum k (k-1) Q_k / N^2 - 1). Variance by the delta method, m taken as given.
 * N^2 and not N (N-1), a form also in use: the source divides by twice the sum over pairs of units of the products of
 * their incidences, which is N^2 (m-1)/m for units that hold equally many.
 *
 * Source: Lee & Chao 1994, Biometrics 50:88-97; Chazdon et al. 1998, in Forest Biodiversity Research, Monitoring and
 * Modeling, 285-309 [from memory]; the interval as for Chao2, Chao 1987, Biometrics 43:783-791.
 *
 * Edge cases: not defined without any occurrence and where every infrequent species is in one unit only; without
 * infrequent species it is S.
 *
 * @example ice([[true, true, true], [true, true, false], [true, false, false]]).value // => 3.84
 * @example ice([[true, false], [false, true]]) // => {notDefined: 'every infrequent species was found in only one sampling unit'}
 */
export function ice(presence: readonly (readonly boolean[])[], cut = 10, confidence?: number): Quantity {
  const unitsBySpecies = (presence[0] ?? []).map((_, j) => presence.filter((unit) => unit[j]).length)
  const sample = incidenceCounts(unitsBySpecies, presence.length)
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  if (onlySingletons(sample, cut)) {
    return {notDefined: 'every infrequent species was found in only one sampling unit'}
  }
  const infrequent = (unit: readonly boolean[]) =>
    unit.some((present, j) => present && unitsBySpecies[j]! <= cut)
  const {value, variance} = infrequentEstimate(sample, cut, presence.filter(infrequent).length)
  return {
    value,
    standardError: Math.sqrt(variance),
    interval: logNormalAboveSeen(sample.species, value, variance, confidence)
  }
}
