import {Matrix, QrDecomposition} from 'ml-matrix'

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
  const left = new Matrix(design.length, columns)
  const right = new Matrix(design.length, 1)
  return (weights, response) => {
    for (const [row, values] of design.entries()) {
      const root = Math.sqrt(weights[row]!)
      for (let column = 0; column < columns; column += 1) left.set(row, column, root * values[column]!)
      right.set(row, 0, root * response[row]!)
    }
    const decomposition = new QrDecomposition(left)
    return decomposition.isFullRank() ? decomposition.solve(right).to1DArray() : undefined
  }
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
