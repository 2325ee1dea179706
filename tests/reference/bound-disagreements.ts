import {isDefined, type Quantity} from '../../src/model/quantity.ts'
import {disagreements} from './disagreement.ts'
import type {RichnessBound} from './reference-file.ts'

/** Disagreements on Chao1 or Chao2: estimate, variance, standard error and limits. */
export function boundDisagreements(
  what: string,
  ours: Quantity,
  theirs: RichnessBound | null
): readonly string[] {
  const {value, standardError, interval} = isDefined(ours) ? ours : {}
  const variance = standardError === undefined ? undefined : standardError ** 2
  return disagreements(
    what,
    [value, variance, standardError, interval?.low, interval?.high],
    [theirs?.estimate, theirs?.variance, theirs?.se, theirs?.lower, theirs?.upper]
  )
}
