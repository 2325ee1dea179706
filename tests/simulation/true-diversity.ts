import {sum} from './season.ts'

/** Diversity of orders 0, 1 and 2 that a random sample of this many individuals has on average (Chao et al. 2014). */
export function expectedOfSample(shares: readonly number[], size: number): readonly [number, number, number] {
  const simpson = sum(shares.map((share) => share ** 2))
  return [
    sum(shares.map((share) => -Math.expm1(size * Math.log1p(-share)))),
    Math.exp(-sum(shares.map((share) => expectedTerm(share, size)))),
    1 / (1 / size + ((size - 1) / size) * simpson)
  ]
}

/** Expected (K/m) ln(K/m) of a species, K its binomial count in m individuals. */
function expectedTerm(share: number, size: number): number {
  let chance = Math.exp(size * Math.log1p(-share))
  let total = 0
  for (let k = 1; k <= size; k += 1) {
    chance *= ((size - k + 1) / k) * (share / (1 - share))
    total += chance * (k / size) * Math.log(k / size)
    if (chance < 1e-18 && k > size * share) break
  }
  return total
}

/** Hill numbers of orders 0, 1 and 2 of the assemblage itself. */
export function hillOf(shares: readonly number[]): readonly [number, number, number] {
  return [
    shares.length,
    Math.exp(-sum(shares.map((share) => share * Math.log(share)))),
    1 / sum(shares.map((share) => share ** 2))
  ]
}

/** Coverage that random samples of this many individuals have on average. */
export function expectedCoverage(shares: readonly number[], size: number): number {
  return 1 - sum(shares.map((share) => share * Math.exp(size * Math.log1p(-share))))
}

/** The size of sample that covers so much of the assemblage on average, rounded to a whole one. */
export function sizeCovering(shares: readonly number[], coverage: number): number {
  let low = 1
  let high = 2
  while (expectedCoverage(shares, high) < coverage) high *= 2
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (expectedCoverage(shares, middle) < coverage) low = middle
    else high = middle
  }
  return high
}
