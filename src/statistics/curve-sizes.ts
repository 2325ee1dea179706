/**
 * Sizes at which a rarefaction and extrapolation curve is drawn: whole numbers from 1 to twice the reference size n,
 * the reference size among them, denser towards it, where curves are compared, and at the very start, where they
 * bend.
 *
 * Formula: a third of the points up to n as (n/6)^u; the others up to n as n - (5n/6)(1 - u)^1.5, and beyond n as
 * n + n u^1.5, for u in equal steps from 0 to 1, rounded.
 *
 * Source: common practice, no source.
 *
 * Edge cases: sizes that round to the same number count once, and a small reference size gets
 * every whole number; a reference size of 0 gets
 * none.
 *
 * @example curveSizes(3) // => [1, 2, 3, 4, 5, 6]
 * @example curveSizes(1000, 12) // => [1, 167, 459, 705, 896, 1000, 1068, 1192, 1354, 1544, 1761, 2000]
 */
export function curveSizes(referenceSize: number, points = 60): number[] {
  if (referenceSize === 0) return []
  const below = Math.floor(points / 2)
  const above = points - below
  const early = Math.max(2, Math.floor(below / 3))
  const start = Math.max(1, referenceSize / EARLY_PART)
  const sizes = new Set<number>([1, referenceSize])
  for (let i = 0; i < early; i++) sizes.add(Math.round(start ** (i / (early - 1))))
  for (let i = 1; i <= below - early; i++) {
    sizes.add(Math.round(referenceSize - (referenceSize - start) * (1 - i / (below - early)) ** DENSITY))
  }
  for (let i = 1; i <= above; i++) sizes.add(Math.round(referenceSize * (1 + (i / above) ** DENSITY)))
  if (2 * referenceSize <= points) for (let size = 1; size <= 2 * referenceSize; size++) sizes.add(size)
  return [...sizes].sort((a, b) => a - b)
}

// 1 would be equal steps.
const DENSITY = 1.5
/** Curves of real catches have turned by a sixth of the catch. */
const EARLY_PART = 6
