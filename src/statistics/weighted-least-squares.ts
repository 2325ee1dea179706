/**
 * Coefficients for weights and a response, one each per row of the design; undefined where they are not
 * unique.
 */
export type LeastSquares = (
  weights: readonly number[],
  response: readonly number[]
) => readonly number[] | undefined

/**
 * Weighted least squares for one design and many weights and responses.
 *
 * Formula: minimise sum w (z - x b)^2, by orthogonal triangular decomposition of sqrt(W) X, which keeps its
 * digits where weights differ by orders of magnitude; where every row belongs to one column alone, b is the
 * weighted mean of its rows.
 *
 * Source: Golub & Van Loan 2013, Matrix Computations, 4th ed., section 5.3 (from memory).
 *
 * Edge cases: columns that depend on one another, or a column without any weight: undefined.
 *
 * @example weightedLeastSquares([[1, 0], [1, 0], [0, 1]])([1, 3, 1], [4, 8, 5]) // => [7, 5]
 * @example weightedLeastSquares([[1, 0], [1, 1], [1, 2]])([1, 1, 1], [1, 3, 5]).map((b) => b.toFixed(6)) // => ['1.000000', '2.000000']
 * @example weightedLeastSquares([[1, 0], [1, 0]])([1, 1], [2, 3]) // => undefined
 */
export function weightedLeastSquares(design: readonly (readonly number[])[]): LeastSquares {
  const columns = design[0]?.length ?? 0
  const cells = cellOfEachRow(design)
  if (cells) return (weights, response) => weightedMeans(cells, columns, weights, response)
  const rows = design.length
  if (columns > rows) return () => undefined
  // Column after column, with the response as one more: a fit comes here some dozen times, a permutation test
  // ten thousand times, for matrices of a few rows.
  const cellsOf = new Float64Array((columns + 1) * rows)
  return (weights, response) => {
    for (let row = 0; row < rows; row += 1) {
      const root = Math.sqrt(weights[row]!)
      const values = design[row]!
      for (let column = 0; column < columns; column += 1)
        cellsOf[column * rows + row] = root * values[column]!
      cellsOf[columns * rows + row] = root * response[row]!
    }
    return triangularised(cellsOf, rows, columns) ? backSubstituted(cellsOf, rows, columns) : undefined
  }
}

/** What is left of a column beside those before it, over the column itself: below this they depend on one another. */
const dependent = 1e-13

/** Householder reflections in place, column after column; false where columns depend on one another. */
function triangularised(cells: Float64Array, rows: number, columns: number): boolean {
  for (let pivot = 0; pivot < columns; pivot += 1) {
    const start = pivot * rows
    let above = 0
    for (let row = 0; row < pivot; row += 1) above += cells[start + row]! ** 2
    let below = 0
    for (let row = pivot; row < rows; row += 1) below += cells[start + row]! ** 2
    const norm = Math.sqrt(below)
    if (!(norm > dependent * Math.sqrt(above + below))) return false
    const head = cells[start + pivot]!
    const diagonal = head > 0 ? -norm : norm
    cells[start + pivot] = head - diagonal
    const scale = diagonal * (head - diagonal)
    for (let column = pivot + 1; column <= columns; column += 1) {
      const other = column * rows
      let product = 0
      for (let row = pivot; row < rows; row += 1) product += cells[start + row]! * cells[other + row]!
      const factor = product / scale
      for (let row = pivot; row < rows; row += 1) cells[other + row]! += factor * cells[start + row]!
    }
    cells[start + pivot] = diagonal
  }
  return true
}

function backSubstituted(cells: Float64Array, rows: number, columns: number): readonly number[] {
  const coefficients = Array.from({length: columns}, () => 0)
  for (let row = columns - 1; row >= 0; row -= 1) {
    let rest = cells[columns * rows + row]!
    for (let column = row + 1; column < columns; column += 1) {
      rest -= cells[column * rows + row]! * coefficients[column]!
    }
    coefficients[row] = rest / cells[row * rows + row]!
  }
  return coefficients
}

/** The column to which each row belongs, where every row is 1 in one column and 0 in all others. */
function cellOfEachRow(design: readonly (readonly number[])[]): readonly number[] | undefined {
  const cells: number[] = []
  for (const row of design) {
    const cell = row.indexOf(1)
    if (cell < 0 || row.some((value, column) => column !== cell && value !== 0)) return undefined
    cells.push(cell)
  }
  return cells
}

function weightedMeans(
  cells: readonly number[],
  columns: number,
  weights: readonly number[],
  response: readonly number[]
): readonly number[] | undefined {
  const sums = Array.from({length: columns}, () => 0)
  const totals = Array.from({length: columns}, () => 0)
  for (let row = 0; row < cells.length; row += 1) {
    const cell = cells[row]!
    sums[cell]! += weights[row]! * response[row]!
    totals[cell]! += weights[row]!
  }
  return totals.every((total) => total > 0) ? sums.map((sum, cell) => sum / totals[cell]!) : undefined
}
