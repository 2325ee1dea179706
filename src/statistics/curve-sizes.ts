/**
 * Sizes at which a rarefaction and extrapolation curve is drawn: whole numbers from 1 to twice the reference size,
 * the reference size among them, denser towards it, where curves are compared.
 *
 * Formula: n - (n-1) u^1.5 and n + n u^1.5 for u in equal steps, rounded.
 *
 * Source: common practice, no source.
 *
 * Edge cases: sizes that round to the same number count once, and a small reference size gets
 * every whole number; a reference size of 0 gets
 * none.
 *
 * @example curveSizes(3) // => [1, 2, 3, 4, 5, 6]
 * @example curveSizes(1000, 6) // => [1, 647, 1000, 1192, 1544, 2000]
 */
export function curveSizes(referenceSize: number, points = 60): number[] {
  if (referenceSize === 0) return []
  const below = Math.floor(points / 2)
  const above = points - below
  const sizes = new Set<number>()
  for (let i = 0; i < below; i++) {
    sizes.add(Math.round(referenceSize - (referenceSize - 1) * (1 - i / (below - 1)) ** DENSITY))
  }
  for (let i = 1; i <= above; i++) sizes.add(Math.round(referenceSize * (1 + (i / above) ** DENSITY)))
  if (2 * referenceSize <= points) for (let size = 1; size <= 2 * referenceSize; size++) sizes.add(size)
  return [...sizes].sort((a, b) => a - b)
}

// 1 would be equal steps.
const DENSITY = 1.5
