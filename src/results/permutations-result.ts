import type {Measure} from '../model/quantity.ts'
import type {PermutationsResult} from '../model/results.ts'
import type {PermutationScheme} from '../statistics/permutations.ts'
import {counted, words} from './counted.ts'

/** How the arrangements of a permutation test came about. */
export function permutationsResult(scheme: PermutationScheme, what: string): PermutationsResult {
  const {distinct, tried, exhaustive, smallestP} = scheme
  return {
    distinct: counted(`Distinct arrangements, ${what}`, distinct, words.arrangements),
    tried: counted(`Arrangements tried, ${what}`, tried, words.arrangements),
    exhaustive,
    floor: {label: `Smallest p that the design allows, ${what}`, kind: 'probability', value: smallestP}
  }
}

/** The same where there was no test. */
export function noPermutations(what: string, notDefined: string): PermutationsResult {
  const none = (label: string, kind: Measure['kind']): Measure => ({
    label: `${label}, ${what}`,
    kind,
    notDefined
  })
  return {
    distinct: none('Distinct arrangements', 'count'),
    tried: none('Arrangements tried', 'count'),
    exhaustive: false,
    floor: none('Smallest p that the design allows', 'probability')
  }
}

/** The reasons of a refusal as the reason of a measure. */
export function refusal(reasons: readonly string[]): string {
  return reasons.join('; ')
}
