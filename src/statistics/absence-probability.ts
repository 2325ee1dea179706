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
 * absenceProbability(n, x, m) for one n and m and many x: as long as x < m, products over fewer factors are the
 * beginnings of those over more, and are kept. There are never more than about sqrt(46 n) of them.
 */
export function absenceProbabilities(n: number, m: number): (x: number) => number {
  const products = [1]
  return (x) => {
    if (x >= m) return absenceProbability(n, x, m)
    for (let j = products.length - 1; j < x; j++) {
      const before = products[j]!
      if (before === 0) return 0
      const product = before * ((n - m - j) / (n - j))
      products.push(product < 1e-20 ? 0 : product)
    }
    return products[x]!
  }
}
