/**
 * An axis, given by the coordinates of the samples on it, in one of its two directions: the same one every
 * time.
 *
 * Formula: turned so that the coordinate of largest size is positive.
 *
 * Source: common practice, no source.
 *
 * Edge cases: of coordinates that tie for the largest to one part in 1e9 the first is made positive. Zeros
 * stay as they are.
 *
 * @example fixedSign([1, -3, 2]) // => [-1, 3, -2]
 * @example fixedSign([-2, 2, 0]) // => [2, -2, 0]
 */
export function fixedSign(axis: readonly number[]): readonly number[] {
  const largest = Math.max(...axis.map(Math.abs))
  const leading = axis.find((value) => Math.abs(value) >= largest * (1 - 1e-9)) ?? 0
  // Adding 0 turns -0 into 0, which would print as another byte.
  return axis.map((value) => (leading < 0 ? -value : value) + 0)
}
