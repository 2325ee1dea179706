import type {FrequencyCounts} from './frequency-counts.ts'

/**
 * Lower bound of the number of species that were there and not seen, f0 (or Q0), not rounded.
 *
 * Formula: k f1^2 / (2 f2), or k f1 (f1-1) / 2 where f2 = 0; k = (n-1)/n, with T, Q1, Q2 for incidences.
 *
 * Source: Chao 1984, Scand. J. Stat. 11:265-270; Chao 1987, Biometrics 43:783-791.
 *
 * Edge cases: 0 for an empty sample, without singletons, and for a single singleton without doubletons.
 *
 * @example undetectedSpecies(frequencyCounts([1, 1, 2, 2, 4])) // => 0.9
 * @example undetectedSpecies(frequencyCounts([3, 2])) // => 0
 */
export function undetectedSpecies({size, singletons, doubletons}: FrequencyCounts): number {
  if (singletons === 0) return 0
  const k = (size - 1) / size
  return doubletons > 0 ? (k * singletons ** 2) / (2 * doubletons) : (k * singletons * (singletons - 1)) / 2
}
