import {inverse, Matrix} from 'ml-matrix'
import {countDeviance, countLogLikelihood} from './count-log-likelihood.ts'
import {type CountData, type RegressionState, separatedMean} from './iterated-weighted-regression.ts'

/** A fitted model of counts, or why there is none. */
export type CountModel = CountModelFit | CountModelFailure

export interface CountModelFit {
  readonly family: 'negative binomial' | 'Poisson'
  /**
   * Aggregation parameter: variance = mu + mu^2/theta. Absent for the Poisson model, where it is infinite.
   */
  readonly theta?: number
  readonly thetaStandardError?: number
  /** Natural logarithms; one per column of the design. */
  readonly coefficients: readonly number[]
  /** Covariance of the coefficients with theta taken as known. */
  readonly covariance: readonly (readonly number[])[]
  readonly standardErrors: readonly number[]
  /** Expected counts. */
  readonly means: readonly number[]
  /** (y - mu) / standard deviation at mu. */
  readonly pearsonResiduals: readonly number[]
  readonly deviance: number
  readonly logLikelihood: number
  /** Units less columns of the design. */
  readonly residualDegreesOfFreedom: number
  readonly iterations: number
}

export interface CountModelFailure {
  readonly failed: 'no catch' | 'not estimable' | 'separation' | 'no convergence'
  /** Completes the sentence 'no model, because ...'. */
  readonly message: string
  /** The limit of the log-likelihood (separation) or the last value of it (no convergence). */
  readonly logLikelihood?: number
}

export function isFitted(model: CountModel): model is CountModelFit {
  return 'coefficients' in model
}

const failureMessages: Readonly<Record<CountModelFailure['failed'], string>> = {
  'no catch': 'nothing was caught anywhere',
  'not estimable': 'the factors cannot be told apart, or no unit is left to measure the spread by',
  separation: 'a level of a factor caught nothing, so its rate ratio has no finite estimate',
  'no convergence': 'the fit did not settle'
}

/**
 * What a finished iteration says: the model with its standard errors, or the failure.
 *
 * Formula: covariance (X'WX)^-1, W = mu/(1 + mu/theta), the expected information given theta; Pearson
 * residual (y - mu)/sqrt(mu + mu^2/theta).
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, 2nd ed., section 2.5. Standard errors given
 * theta are those that Venables & Ripley 2002, Modern Applied Statistics with S, 4th ed., section 7.4 print.
 *
 * Edge cases: an expected count below 1e-6 is separation; an iteration that did not settle is no convergence.
 *
 * @example countModel({counts: [2, 2], design: [[1], [1]]}, {coefficients: [0], means: [0, 0], converged: true, iterations: 9}, Infinity).failed // => 'separation'
 * @example countModel({counts: [2, 2], design: [[1], [1]]}, {coefficients: [0.69], means: [2, 2], converged: false, iterations: 9}, Infinity).failed // => 'no convergence'
 */
export function countModel(
  {counts, design}: CountData,
  state: RegressionState,
  theta: number,
  thetaStandardError?: number
): CountModel {
  const {means, coefficients} = state
  const logLikelihood = countLogLikelihood(counts, means, theta)
  if (means.some((mean) => mean < separatedMean)) return failure('separation', logLikelihood)
  if (!state.converged) return failure('no convergence', logLikelihood)
  const covariance = covarianceOf(design, means, theta)
  return {
    ...(theta === Number.POSITIVE_INFINITY ? {family: 'Poisson'} : {family: 'negative binomial', theta}),
    ...(thetaStandardError !== undefined && {thetaStandardError}),
    coefficients,
    covariance,
    standardErrors: coefficients.map((_, column) => Math.sqrt(covariance[column]![column]!)),
    means,
    pearsonResiduals: counts.map((count, unit) => {
      const mean = means[unit]!
      return (count - mean) / Math.sqrt(mean + mean ** 2 / theta)
    }),
    deviance: countDeviance(counts, means, theta),
    logLikelihood,
    residualDegreesOfFreedom: counts.length - coefficients.length,
    iterations: state.iterations
  }
}

export function failure(failed: CountModelFailure['failed'], logLikelihood?: number): CountModelFailure {
  return {failed, message: failureMessages[failed], ...(logLikelihood !== undefined && {logLikelihood})}
}

function covarianceOf(
  design: readonly (readonly number[])[],
  means: readonly number[],
  theta: number
): readonly (readonly number[])[] {
  const columns = design[0]?.length ?? 0
  const information = Matrix.zeros(columns, columns)
  for (const [unit, row] of design.entries()) {
    const weight = means[unit]! / (1 + means[unit]! / theta)
    for (let a = 0; a < columns; a += 1) {
      for (let b = 0; b < columns; b += 1) {
        information.set(a, b, information.get(a, b) + weight * row[a]! * row[b]!)
      }
    }
  }
  return inverse(information).to2DArray()
}
