/**
 * Which way p of a permanova errs when spreads differ: too small, too large, hardly at all, or not to be
 * said.
 */
export type DispersionSizeBias = 'too small' | 'too large' | 'hardly' | 'unclear'

/**
 * Which way unequal spreads push the p of a permanova, from the sizes of the groups and their mean distances
 * to the centroid. To be read where spreads do differ; a dispersion test that shows nothing at a few samples
 * a group does not prove them equal.
 *
 * Formula: sign of the covariance of size and spread over groups: larger groups more spread, p too large;
 * smaller groups more spread, p too small.
 *
 * Source: Anderson & Walsh 2013, Ecol. Monogr. 83:557-574.
 *
 * Edge cases: equal sizes: 'hardly' (with equal numbers permanova is little affected). Equal spreads, one
 * group, or a covariance of zero: 'unclear'.
 *
 * @example dispersionSizeBias([3, 9], [0.6, 0.2]) // => 'too small'
 * @example dispersionSizeBias([3, 9], [0.2, 0.6]) // => 'too large'
 * @example dispersionSizeBias([5, 5], [0.2, 0.6]) // => 'hardly'
 * @example dispersionSizeBias([3, 9], [0.4, 0.4]) // => 'unclear'
 */
export function dispersionSizeBias(
  sizes: readonly number[],
  meanDistances: readonly number[]
): DispersionSizeBias {
  const meanSize = sizes.reduce((sum, size) => sum + size, 0) / sizes.length
  if (sizes.length > 1 && sizes.every((size) => size === sizes[0])) return 'hardly'
  const covariance = sizes.reduce((sum, size, group) => sum + (size - meanSize) * meanDistances[group]!, 0)
  if (Math.abs(covariance) < 1e-9) return 'unclear'
  return covariance < 0 ? 'too small' : 'too large'
}
