/**
 * The rising sequence nearest to a sequence of values.
 *
 * Formula: least squares under y_1 <= y_2 <= ...: neighbours that fall are pooled into their mean until none falls.
 *
 * Source: Kruskal 1964, Psychometrika 29:115-129.
 *
 * Edge cases: no values give none; a rising sequence is its own fit.
 *
 * @example monotoneRegression([1, 3, 2, 4]) // => [1, 2.5, 2.5, 4]
 * @example monotoneRegression([3, 2, 1]) // => [2, 2, 2]
 * @example monotoneRegression([]) // => []
 */
export function monotoneRegression(values: readonly number[]): number[] {
  const pools: {sum: number; size: number}[] = []
  for (const value of values) {
    let pool = {sum: value, size: 1}
    for (
      let before = pools.at(-1);
      before && before.sum / before.size >= pool.sum / pool.size;
      before = pools.at(-1)
    ) {
      pool = {sum: before.sum + pool.sum, size: before.size + pool.size}
      pools.pop()
    }
    pools.push(pool)
  }
  return pools.flatMap(({sum, size}) => Array.from({length: size}, () => sum / size))
}
