import type {Quantity} from '../model/quantity.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {hillObserved} from './hill-observed.ts'

/** One point of a diversity profile. */
export interface ProfilePoint {
  readonly order: number
  /** Effective species. */
  readonly diversity: Quantity
}

/**
 * Diversity profile: observed Hill numbers at orders from 0 to 3, in effective species.
 *
 * Formula: hillObserved at q = 0, 0.1, ... 3.
 *
 * Source: Hill 1973, Ecology 54:427-432; profiles over orders Chao et al. 2014, Ecol. Monogr. 84:45-67.
 *
 * Edge cases: an empty sample has a profile of points that are not defined.
 *
 * @example hillProfile(frequencyCounts([4, 4]), 2) // => [{order: 0, diversity: {value: 2}}, {order: 1.5, diversity: {value: 2}}, {order: 3, diversity: {value: 2}}]
 */
export function hillProfile(sample: FrequencyCounts, steps = 30): ProfilePoint[] {
  return Array.from({length: steps + 1}, (_, i) => {
    // Divided last, so that orders 1 and 2 are exact.
    const order = (3 * i) / steps
    return {order, diversity: hillObserved(sample, order)}
  })
}
