import type {Quantity} from '../model/quantity.ts'

/**
 * Median: the middle value of a sample, in the unit of the values.
 *
 * Formula: sort ascending; the middle value when n is odd, the mean of the two middle values when n is even.
 *
 * Source: Hyndman & Fan 1996, Am. Stat. 50:361-365 (every continuous definition there agrees at p = 0.5).
 *
 * Edge cases: an empty sample has no median; one value is its own median.
 *
 * @example median([3, 1, 2]) // => {value: 2}
 * @example median([4, 1, 3, 2]) // => {value: 2.5}
 * @example median([]) // => {notDefined: 'there are no values'}
 */
export function median(values: readonly number[]): Quantity {
  if (values.length === 0) return {notDefined: 'there are no values'}
  const ascending = [...values].sort((a, b) => a - b)
  const upper = ascending[values.length >> 1]!
  const lower = ascending[(values.length - 1) >> 1]!
  return {value: (lower + upper) / 2}
}
