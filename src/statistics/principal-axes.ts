import {EigenvalueDecomposition, Matrix} from 'ml-matrix'
import {fixedSign} from './fixed-sign.ts'

/** Eigenvalues in descending order, each with its eigenvector of length 1. */
export interface PrincipalAxes {
  readonly eigenvalues: readonly number[]
  readonly eigenvectors: readonly (readonly number[])[]
}

/**
 * Eigenvalues and eigenvectors of a symmetric matrix in an order and with signs that do not depend on how
 * they were computed.
 *
 * Formula: A v = lambda v, descending lambda; each v with the sign of fixedSign.
 *
 * Source: decomposition by tridiagonal QL, Wilkinson & Reinsch 1971, Linear Algebra (in ml-matrix).
 *
 * Edge cases: equal eigenvalues have no axes of their own: any turn within them is as good. No rows give no
 * axes.
 *
 * @example principalAxes([[2, 0], [0, 3]]).eigenvalues // => [3, 2]
 * @example principalAxes([[2, 0], [0, 3]]).eigenvectors // => [[0, 1], [1, 0]]
 * @example principalAxes([]) // => {eigenvalues: [], eigenvectors: []}
 */
export function principalAxes(symmetric: readonly (readonly number[])[]): PrincipalAxes {
  if (symmetric.length === 0) return {eigenvalues: [], eigenvectors: []}
  const {realEigenvalues, eigenvectorMatrix} = new EigenvalueDecomposition(
    new Matrix(symmetric.map((row) => [...row])),
    {assumeSymmetric: true}
  )
  const order = realEigenvalues
    .map((_, index) => index)
    .sort((a, b) => realEigenvalues[b]! - realEigenvalues[a]! || a - b)
  return {
    eigenvalues: order.map((index) => realEigenvalues[index]!),
    eigenvectors: order.map((index) => fixedSign(eigenvectorMatrix.getColumn(index)))
  }
}
