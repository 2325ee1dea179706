import {countDeviance} from './count-log-likelihood.ts'
import {weightedLeastSquares} from './weighted-least-squares.ts'

/** Counts and what may explain them, one entry per unit. */
export interface CountData {
  /** Whole numbers from 0 on. */
  readonly counts: readonly number[]
  /** Rows of the design matrix; see designMatrix. */
  readonly design: readonly (readonly number[])[]
  /** Natural logarithm of the effort behind each count; 0 where absent. */
  readonly offset?: readonly number[]
}

/** Where the iteration ended. */
export interface RegressionState {
  readonly coefficients: readonly number[]
  /** Expected counts. */
  readonly means: readonly number[]
  readonly converged: boolean
  readonly iterations: number
}

/** Expected counts below this, where nothing was caught, have run away towards 0: nothing finite fits. */
export const separatedMean = 1e-6

const iterationLimit = 100

/**
 * Maximum-likelihood coefficients of a count model with log link at a given theta, by iterated weighted least
 * squares from given expected counts. Variance of a count: mu + mu^2/theta; theta Infinity is the Poisson
 * model.
 *
 * Formula: solve (X'WX) b = X'W z until the expected counts stand, W = mu/(1 + mu/theta), z = ln mu - offset
 * + (y - mu)/mu. A step that raises the deviance is halved.
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, 2nd ed., section 2.5.
 *
 * Edge cases: where a level caught nothing its expected counts run towards 0 and the iteration ends near
 * there (see separatedMean). Not converged after 100 steps, or a design without full rank: converged is
 * false.
 *
 * @example iteratedWeightedRegression({counts: [1, 3], design: [[1], [1]]}, Infinity, [1, 3]).means.map((mean) => mean.toFixed(6)) // => ['2.000000', '2.000000']
 */
export function iteratedWeightedRegression(
  {counts, design, offset}: CountData,
  theta: number,
  startMeans: readonly number[]
): RegressionState {
  const solve = weightedLeastSquares(design)
  let means: readonly number[] = startMeans
  let coefficients: readonly number[] = []
  let badness = countDeviance(counts, means, theta)
  for (let iteration = 1; iteration <= iterationLimit; iteration += 1) {
    const weights = means.map((mean) => mean / (1 + mean / theta))
    const response = means.map(
      (mean, unit) => Math.log(mean) - (offset?.[unit] ?? 0) + (counts[unit]! - mean) / mean
    )
    let next = solve(weights, response)
    if (next === undefined) return {coefficients, means, converged: false, iterations: iteration}
    let nextMeans = expected(design, next, offset)
    let nextBadness = countDeviance(counts, nextMeans, theta)
    for (let halving = 0; halving < 30 && !(nextBadness <= badness * (1 + 1e-9) + 1e-9); halving += 1) {
      if (coefficients.length === 0) break
      const from: readonly number[] = coefficients
      next = next.map((value, column) => (value + from[column]!) / 2)
      nextMeans = expected(design, next, offset)
      nextBadness = countDeviance(counts, nextMeans, theta)
    }
    const settled = nextMeans.every((mean, unit) => Math.abs(mean - means[unit]!) <= 1e-9 * (mean + 0.01))
    coefficients = next
    means = nextMeans
    badness = nextBadness
    if (settled) return {coefficients, means, converged: true, iterations: iteration}
  }
  return {coefficients, means, converged: false, iterations: iterationLimit}
}

/** Expected counts, kept above 0 so that their logarithm and the weights stay finite. */
function expected(
  design: readonly (readonly number[])[],
  coefficients: readonly number[],
  offset: readonly number[] | undefined
): number[] {
  return design.map((row, unit) => {
    let linear = offset?.[unit] ?? 0
    for (let column = 0; column < row.length; column += 1) linear += row[column]! * coefficients[column]!
    return Math.max(1e-12, Math.exp(linear))
  })
}
