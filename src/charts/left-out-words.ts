import {isDefined} from '../model/quantity.ts'
import type {ScopeResult} from '../model/results.ts'
import {amountWords} from './measure-words.ts'

/** A sentence on the animals of a scope that are not in its species counts; nothing where all are. */
export function leftOutWords({leftOutIndividuals}: ScopeResult): readonly string[] {
  if (isDefined(leftOutIndividuals) && leftOutIndividuals.value === 0) return []
  return [
    `Left out, because they count as no species: ${amountWords(leftOutIndividuals, 'individual', 'individuals')}.`
  ]
}
