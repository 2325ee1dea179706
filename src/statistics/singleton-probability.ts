import type {FrequencyCounts} from './frequency-counts.ts'

/**
 * A, the mean share of one individual draw that the species caught once have in the assemblage (for incidences, the
 * mean probability of meeting them in a unit). The share of all unseen species is f1/n (1-A).
 *
 * Formula: 2 f2 / ((n-1) f1 + 2 f2), or 2 / ((n-1)(f1-1) + 2) where f2 = 0; 1 where f1 = 0.
 *
 * Source: Chao & Jost 2012, Ecology 93:2533-2547.
 *
 * Edge cases: always above 0 and at most 1.
 *
 * @example singletonProbability(frequencyCounts([1, 1, 2, 2, 4])) // => 0.18181818
 * @example singletonProbability(frequencyCounts([3, 2])) // => 1
 */
export function singletonProbability({size, singletons, doubletons}: FrequencyCounts): number {
  if (singletons === 0) return 1
  return doubletons > 0
    ? (2 * doubletons) / ((size - 1) * singletons + 2 * doubletons)
    : 2 / ((size - 1) * (singletons - 1) + 2)
}
