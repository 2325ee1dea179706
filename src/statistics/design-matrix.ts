/** Explanatory variables of a model as columns of numbers, one row per unit. */
export interface DesignMatrix {
  readonly rows: readonly (readonly number[])[]
  /**
   * For every factor and level the column that holds its difference from the first level; none for that one.
   */
  readonly columnOf: readonly ReadonlyMap<string | number, number>[]
}

/**
 * Columns of a model with an intercept and factors without interaction. `factors[f][i]` is the level of unit
 * i.
 *
 * Formula: a column of ones, then for every factor one column of 0 and 1 per level but the first (treatment
 * contrasts); levels in the order in which units first show them.
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, 2nd ed., section 3.4 (from memory).
 *
 * Edge cases: a factor with one level adds no column; no factors leave the intercept alone.
 *
 * @example designMatrix(3, [['a', 'b', 'a']]).rows // => [[1, 0], [1, 1], [1, 0]]
 * @example designMatrix(2, []).rows // => [[1], [1]]
 */
export function designMatrix(
  unitCount: number,
  factors: readonly (readonly (string | number)[])[]
): DesignMatrix {
  let columnCount = 1
  const columnOf = factors.map((factor) => {
    const columns = new Map<string | number, number>()
    for (const level of [...new Set(factor)].slice(1)) columns.set(level, columnCount++)
    return columns
  })
  const rows = Array.from({length: unitCount}, (_, unit) => {
    const row = Array.from({length: columnCount}, (_unused, column) => (column === 0 ? 1 : 0))
    for (const [index, factor] of factors.entries()) {
      const column = columnOf[index]!.get(factor[unit]!)
      if (column !== undefined) row[column] = 1
    }
    return row
  })
  return {rows, columnOf}
}
