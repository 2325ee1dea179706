/**
 * Inner products of samples about the centres of their groups, from dissimilarities alone.
 *
 * Formula: G = (I - H) (-D^2/2) (I - H), H the matrix that replaces a value by its group's mean; one group
 * for all gives inner products about the common centre.
 *
 * Source: Gower 1966, Biometrika 53:325-338; with groups, McArdle & Anderson 2001, Ecology 82:290-297.
 *
 * Edge cases: dissimilarities that no Euclidean space holds (Bray-Curtis among them) can give negative values
 * on the diagonal: squared distances to a centre that are below zero. No samples give an empty matrix.
 *
 * @example gowerCentred([[0, 2], [2, 0]]) // => [[1, -1], [-1, 1]]
 * @example gowerCentred([[0, 2], [2, 0]], ['a', 'b']) // => [[0, 0], [0, 0]]
 */
export function gowerCentred(
  dissimilarities: readonly (readonly number[])[],
  groups: readonly (string | number)[] = dissimilarities.map(() => 0)
): number[][] {
  const halfSquares = dissimilarities.map((row) => row.map((value) => -(value ** 2) / 2))
  // The matrix is symmetric, so centring its rows twice with a transposition between centres both sides.
  return transposed(rowsCentred(transposed(rowsCentred(halfSquares, groups)), groups))
}

function rowsCentred(
  matrix: readonly (readonly number[])[],
  groups: readonly (string | number)[]
): readonly (readonly number[])[] {
  const members = new Map<string | number, number[]>()
  for (const [index, group] of groups.entries()) members.set(group, [...(members.get(group) ?? []), index])
  return matrix.map((row) => {
    const centred = [...row]
    for (const indices of members.values()) {
      const mean = indices.reduce((sum, index) => sum + row[index]!, 0) / indices.length
      for (const index of indices) centred[index] = row[index]! - mean + 0
    }
    return centred
  })
}

function transposed(matrix: readonly (readonly number[])[]): number[][] {
  return matrix.map((_, column) => matrix.map((row) => row[column]!))
}
