import type {Quantity} from '../model/quantity.ts'
import {speciesOverlap} from './species-overlap.ts'

/** Dissimilarity of presence and absence, and the two parts that add up to it. */
export interface TurnoverNestedness {
  readonly sorensen: Quantity
  /** Species replaced by others. */
  readonly turnover: Quantity
  /** Species missing from the poorer samples. */
  readonly nestedness: Quantity
}

/**
 * Sorensen dissimilarity among two or more samples and its parts: turnover and nestedness. A sample is one
 * value per species, the species in the same order in all; above 0 is present.
 *
 * Formula: for each pair, m = min(b, c) and M = max(b, c) of the species in one sample only. Two samples with
 * a shared species: Sorensen (m + M)/(2 a + m + M), turnover m/(a + m). Several, with S_i species each and
 * S_T together: Sorensen (sum m + sum M)/(2 (sum S_i - S_T) + sum m + sum M), turnover sum m/(sum S_i - S_T +
 * sum m). Nestedness is the difference. For two samples the second form is the first one.
 *
 * Source: Baselga 2010, Glob. Ecol. Biogeogr. 19:134-143.
 *
 * Edge cases: fewer than two samples, or samples without any species, have no dissimilarity. Turnover is 0/0
 * where no species is shared and none is replaced (an empty sample beside a filled one): not defined. A
 * multiple-sample value grows with the number of samples: compare like with like.
 *
 * @example turnoverNestedness([[1, 1, 0], [0, 1, 1]]) // => {sorensen: {value: 0.5}, turnover: {value: 0.5}, nestedness: {value: 0}}
 * @example turnoverNestedness([[1, 1, 1], [1, 0, 0]]) // => {sorensen: {value: 0.5}, turnover: {value: 0}, nestedness: {value: 0.5}}
 * @example turnoverNestedness([[1, 1], [0, 0]]).turnover // => {notDefined: 'no species is shared and none is replaced'}
 */
export function turnoverNestedness(samples: readonly (readonly number[])[]): TurnoverNestedness {
  if (samples.length < 2) return undefinedAs('there are fewer than two samples')
  let smaller = 0
  let larger = 0
  for (const [index, first] of samples.entries()) {
    for (const second of samples.slice(index + 1)) {
      const {onlyFirst, onlySecond} = speciesOverlap(first, second)
      smaller += Math.min(onlyFirst, onlySecond)
      larger += Math.max(onlyFirst, onlySecond)
    }
  }
  const repeats = repeatedOccurrences(samples)
  if (repeats + smaller + larger === 0) return undefinedAs('no sample holds any species')
  const sorensen = (smaller + larger) / (2 * repeats + smaller + larger)
  if (repeats + smaller === 0) {
    const reason = 'no species is shared and none is replaced'
    return {sorensen: {value: sorensen}, turnover: {notDefined: reason}, nestedness: {notDefined: reason}}
  }
  const turnover = smaller / (repeats + smaller)
  return {
    sorensen: {value: sorensen},
    turnover: {value: turnover},
    nestedness: {value: sorensen - turnover}
  }
}

/**
 * Sum of S_i less S_T: occurrences of species beyond their first; the shared species where there are two
 * samples.
 */
function repeatedOccurrences(samples: readonly (readonly number[])[]): number {
  const speciesCount = samples[0]?.length ?? 0
  let repeats = 0
  for (let species = 0; species < speciesCount; species += 1) {
    const occurrences = samples.filter((sample) => sample[species]! > 0).length
    repeats += Math.max(0, occurrences - 1)
  }
  return repeats
}

function undefinedAs(notDefined: string): TurnoverNestedness {
  return {sorensen: {notDefined}, turnover: {notDefined}, nestedness: {notDefined}}
}
