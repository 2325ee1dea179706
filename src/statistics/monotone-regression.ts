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
export function monotoneRegression(values: ArrayLike<number>): number[] {
  // Typed and overwritten in place: non-metric scaling comes here some ten thousand times.
  const sums = new Float64Array(values.length)
  const sizes = new Int32Array(values.length)
  let pools = 0
  for (let place = 0; place < values.length; place += 1) {
    let sum = values[place]!
    let size = 1
    while (pools > 0 && sums[pools - 1]! * size >= sum * sizes[pools - 1]!) {
      pools -= 1
      sum += sums[pools]!
      size += sizes[pools]!
    }
    sums[pools] = sum
    sizes[pools] = size
    pools += 1
  }
  const fitted: number[] = []
  for (let pool = 0; pool < pools; pool += 1) {
    const mean = sums[pool]! / sizes[pool]!
    for (let place = 0; place < sizes[pool]!; place += 1) fitted.push(mean)
  }
  return fitted
}
