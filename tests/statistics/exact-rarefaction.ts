/**
 * A second implementation of rarefaction that shares nothing with the first: whole-number binomial coefficients,
 * divided only at the end.
 */
export function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n
  let result = 1n
  for (let i = 1; i <= k; i++) result = (result * BigInt(n - k + i)) / BigInt(i)
  return result
}

/** a / b to about 17 digits. */
export function ratio(a: bigint, b: bigint): number {
  const scale = 10n ** 30n
  return Number((a * scale) / b) / 1e30
}

/** Expected f_k(m) for k from 1 to m: sum of choose(X, k) choose(n-X, m-k) / choose(n, m). */
export function exactFrequencies(counts: readonly number[], n: number, m: number): number[] {
  const all = choose(n, m)
  return Array.from({length: m}, (_, i) =>
    ratio(
      counts.reduce((sum, x) => sum + choose(x, i + 1) * choose(n - x, m - i - 1), 0n),
      all
    )
  )
}

export function exactHill(counts: readonly number[], n: number, order: 0 | 1 | 2, m: number): number {
  const frequencies = exactFrequencies(counts, n, m)
  const records = frequencies.reduce((sum, f, i) => sum + f * (i + 1), 0)
  const sum = (term: (k: number) => number) => frequencies.reduce((total, f, i) => total + f * term(i + 1), 0)
  if (order === 0) return sum(() => 1)
  if (order === 1) return Math.exp(sum((k) => -(k / records) * Math.log(k / records)))
  return 1 / sum((k) => (k / records) ** 2)
}

/** 1 - sum (X/U) choose(n-X, m) / choose(n-1, m), the coverage below the reference size. */
export function exactCoverage(counts: readonly number[], n: number, m: number): number {
  const records = counts.reduce((sum, x) => sum + x, 0)
  return 1 - counts.reduce((sum, x) => sum + (x / records) * ratio(choose(n - x, m), choose(n - 1, m)), 0)
}
