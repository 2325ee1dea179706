/**
 * Probability that m records drawn without replacement from n miss a species with x of them:
 * choose(n-x, m) / choose(n, m), for whole 0 <= m <= n and 0 <= x <= n.
 *
 * A plain product, because the difference of log factorials loses nine digits at n = 1e6. It stops when nothing is
 * left that a double would notice, after at most about sqrt(46 n) factors.
 */
export function absenceProbability(n: number, x: number, m: number): number {
  if (x + m > n) return 0
  const [fewer, more] = x < m ? [x, m] : [m, x]
  let probability = 1
  for (let j = 0; j < fewer; j++) {
    probability *= (n - more - j) / (n - j)
    if (probability < 1e-20) return 0
  }
  return probability
}

/**
 * absenceProbability(n, x, m) for one n and m and rising x: as long as x < m the product of one species goes on where
 * that of the species before it ended.
 */
export function absenceProbabilities(n: number, m: number): (x: number) => number {
  let factors = 0
  let probability = 1
  return (x) => {
    if (x >= m || x < factors) return absenceProbability(n, x, m)
    for (; factors < x && probability > 0; factors++) {
      probability *= (n - m - factors) / (n - factors)
      if (probability < 1e-20) probability = 0
    }
    return probability
  }
}
