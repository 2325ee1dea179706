import type {Quantity} from '../model/quantity.ts'
import {chaoLowerBound} from './chao-lower-bound.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'
import {estimatedEntropy} from './shannon-asymptotic.ts'
import {undetectedSpecies} from './undetected-species.ts'

/** Asymptotic diversity of orders 0, 1 and 2. */
export interface AsymptoticDiversity {
  readonly q0: Quantity
  readonly q1: Quantity
  readonly q2: Quantity
}

/**
 * Hill numbers of orders 0, 1 and 2 that the assemblage has, estimated from the sample, in effective species. Order
 * 0 is a lower bound.
 *
 * Formula: q = 0 Chao1 (incidences: Chao2); q = 1 exp of the estimated Shannon entropy; q = 2 n (n-1) / sum X
 * (incidences: U^2 (1 - 1/T) / sum Y (Y-1)).
 *
 * Source: Chao et al. 2014, Ecol. Monogr. 84:45-67; q = 1 Chao, Wang & Jost 2013, Methods Ecol. Evol. 4:1091-1100.
 *
 * Edge cases: an empty sample has none; without any species caught twice or more, order 2 has no bound and so
 * lies above the others; where estimates cross, which the diversities of one assemblage cannot, the sample is too
 * small and none is given.
 *
 * @example hillAsymptotic(frequencyCounts([6, 4, 2, 1, 1])).q2 // => {value: 4.1363636}
 * @example hillAsymptotic(frequencyCounts([2, 2, 2])).q0 // => {notDefined: 'the sample is too small for asymptotic diversity'}
 */
export function hillAsymptotic(sample: FrequencyCounts, confidence?: number): AsymptoticDiversity {
  if (sample.records === 0) {
    const none: Quantity = {notDefined: emptyReason(sample.kind)}
    return {q0: none, q1: none, q2: none}
  }
  const shannon = Math.exp(estimatedEntropy(sample))
  const simpson = estimatedSimpson(sample)
  if (simpson === Number.POSITIVE_INFINITY) {
    return {q0: TOO_SMALL, q1: TOO_SMALL, q2: {notDefined: UNBOUNDED[sample.kind]}}
  }
  if (crosses(sample.species + undetectedSpecies(sample), shannon) || crosses(shannon, simpson)) {
    return {q0: TOO_SMALL, q1: TOO_SMALL, q2: TOO_SMALL}
  }
  return {q0: chaoLowerBound(sample, confidence), q1: {value: shannon}, q2: {value: simpson}}
}

/** Hill number of order 2 of the assemblage; infinite where no species has a count above 1. */
export function estimatedSimpson({classes, records, size}: FrequencyCounts): number {
  const pairs = classes.reduce((sum, {count, species}) => sum + species * count * (count - 1), 0)
  return pairs === 0 ? Number.POSITIVE_INFINITY : (records ** 2 * (1 - 1 / size)) / pairs
}

const TOO_SMALL: Quantity = {notDefined: 'the sample is too small for asymptotic diversity'}

const UNBOUNDED = {
  abundance: 'no species was caught more than once, so that the estimate has no bound',
  incidence: 'no species was found in more than one sampling unit, so that the estimate has no bound'
} as const

function crosses(lowerOrder: number, higherOrder: number): boolean {
  // Equal estimates, as of one species, differ by rounding.
  return higherOrder > lowerOrder * (1 + 1e-9)
}
