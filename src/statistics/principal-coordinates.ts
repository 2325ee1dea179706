import {gowerCentred} from './gower-centred.ts'
import {principalAxes} from './principal-axes.ts'

export type PrincipalCoordinates =
  | {
      /** One row per sample, one column per axis with an eigenvalue above zero. */
      readonly coordinates: readonly (readonly number[])[]
      /** All of them, descending, those below zero included. */
      readonly eigenvalues: readonly number[]
      /** Share of each axis in the sum of the eigenvalues above zero. */
      readonly shares: readonly number[]
      /**
       * Sum of the eigenvalues below zero over that of those above, as a positive number: what no axis can
       * show.
       */
      readonly imaginary: number
    }
  | {readonly notDefined: string}

/**
 * Principal coordinates (classical scaling) of samples from their dissimilarities.
 *
 * Formula: eigenvectors of Gower's matrix (I - 11'/n)(-D^2/2)(I - 11'/n), each times the root of its
 * eigenvalue.
 *
 * Source: Gower 1966, Biometrika 53:325-338.
 *
 * Edge cases: fewer than two samples, or samples all alike: not defined. Eigenvalues below zero
 * (dissimilarities that no Euclidean space holds) are reported, never corrected. Signs: see principalAxes.
 *
 * @example principalCoordinates([[0, 2], [2, 0]]).coordinates.map(([x]) => x.toFixed(6)) // => ['1.000000', '-1.000000']
 * @example principalCoordinates([[0, 0], [0, 0]]) // => {notDefined: 'all samples are alike'}
 * @example principalCoordinates([[0]]) // => {notDefined: 'there are fewer than two samples'}
 */
export function principalCoordinates(dissimilarities: readonly (readonly number[])[]): PrincipalCoordinates {
  if (dissimilarities.length < 2) return {notDefined: 'there are fewer than two samples'}
  if (!dissimilarities.some((row) => row.some((value) => value > 0)))
    return {notDefined: 'all samples are alike'}
  const {eigenvalues, eigenvectors} = principalAxes(gowerCentred(dissimilarities))
  // One eigenvalue is zero by the centring; rounding leaves it a little above or below.
  const threshold = 1e-9 * eigenvalues[0]!
  const axes = eigenvalues.filter((value) => value > threshold)
  const positive = axes.reduce((sum, value) => sum + value, 0)
  const negative = eigenvalues.reduce((sum, value) => (value < -threshold ? sum - value : sum), 0)
  return {
    coordinates: dissimilarities.map((_, sample) =>
      axes.map((value, axis) => Math.sqrt(value) * eigenvectors[axis]![sample]!)
    ),
    eigenvalues: eigenvalues.map((value) => (Math.abs(value) <= threshold ? 0 : value)),
    shares: axes.map((value) => value / positive),
    imaginary: negative / positive
  }
}
