import {isDefined, type Quantity} from '../../src/model/quantity.ts'
import {disagreements} from './disagreement.ts'
import type {IntervalFigures, RichnessBound} from './reference-file.ts'

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

/**
 * Disagreements on the variance and limits of an estimate. The variance is a small difference of large sums of
 * squares, of which ten digits are compared.
 */
export function intervalDisagreements(
  what: string,
  ours: Quantity,
  theirs: IntervalFigures | null
): readonly string[] {
  const {standardError, interval} = isDefined(ours) ? ours : {}
  return disagreements(
    what,
    [standardError === undefined ? undefined : standardError ** 2, interval?.low, interval?.high],
    [theirs?.variance, theirs?.lower, theirs?.upper],
    {relative: 1e-9, absolute: 1e-9}
  )
}
