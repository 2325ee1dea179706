import {isDefined, type Quantity} from '../model/quantity.ts'
import {logNormalAround, normalWithin} from './confidence-interval.ts'

/**
 * The same quantity with the standard error and interval that bootstrap replicates give it.
 *
 * Formula: order 0: log-normal around the estimate; other orders and coverage: estimate +- 1.96 SE; both kept within
 * the bounds.
 *
 * Source: Chao et al. 2014, Ecol. Monogr. 84:45-67, appendix G; log-normal as in confidence-interval.
 *
 * Edge cases: without a standard error, or where the quantity is not defined, it is returned as it is. Intervals
 * describe the pooled catch, and are too narrow where animals are clumped.
 *
 * @example withBootstrapInterval({value: 5}, undefined, {shape: 'normal', lowest: 1, highest: 9}) // => {value: 5}
 * @example withBootstrapInterval({value: 5}, 2, {shape: 'normal', lowest: 1, highest: 9}).interval.low // => 1.0800720
 * @example withBootstrapInterval({value: 5}, 2, {shape: 'log-normal', lowest: 1, highest: 9}).interval.low // => 2.3498614
 */
export function withBootstrapInterval(
  quantity: Quantity,
  standardError: number | undefined,
  {shape, lowest, highest}: IntervalShape,
  confidence?: number
): Quantity {
  if (!isDefined(quantity) || standardError === undefined) return quantity
  const make = shape === 'normal' ? normalWithin : logNormalAround
  return {
    ...quantity,
    standardError,
    interval: make(quantity.value, standardError, lowest, highest, BASIS, confidence)
  }
}

/** How the interval is made and what the quantity cannot leave. */
export interface IntervalShape {
  readonly shape: 'normal' | 'log-normal'
  readonly lowest: number
  readonly highest: number
}

const BASIS = 'assemblage bootstrap'
