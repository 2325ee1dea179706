/**
 * The rising sequence nearest to a sequence of values.
 *
 * Formula: least squares under y_1 <= y_2 <= ...: neighbours that fall are pooled into their mean until none
 * falls.
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
  const sums: number[] = []
  const sizes: number[] = []
  for (const value of values) {
    let sum = value
    let size = 1
    let last = sums.length - 1
    while (last >= 0 && sums[last]! * size >= sum * sizes[last]!) {
      sum += sums[last]!
      size += sizes[last]!
      sums.length = sizes.length = last
      last -= 1
    }
    sums.push(sum)
    sizes.push(size)
  }
  return sums.flatMap((sum, pool) => Array.from({length: sizes[pool]!}, () => sum / sizes[pool]!))
}
