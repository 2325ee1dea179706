import {Matrix, SingularValueDecomposition} from 'ml-matrix'
import {type CountModel, countModel, failure} from './count-model.ts'
import {type CountData, iteratedWeightedRegression} from './iterated-weighted-regression.ts'

/**
 * Generalised linear model of counts: Poisson distribution, log link, offset. Spread beyond Poisson makes its
 * standard errors too small: catches need negativeBinomialGlm, which comes back to this one by itself.
 *
 * Formula: ln mu = offset + X b by maximum likelihood (iteratedWeightedRegression with theta Infinity).
 *
 * Source: McCullagh & Nelder 1989, Generalized Linear Models, 2nd ed., chapter 6.
 *
 * Edge cases: no counts above 0, a design without full column rank or no units beyond its columns, a level
 * without catch (separation) and no convergence are returned as failures with a message.
 *
 * @throws RangeError where a count is not a whole number from 0 on, or the lists differ in length.
 *
 * @example poissonGlm({counts: [1, 3], design: [[1], [1]]}).coefficients[0].toFixed(6) // => '0.693147'
 * @example poissonGlm({counts: [0, 0], design: [[1], [1]]}).failed // => 'no catch'
 * @example poissonGlm({counts: [0, 0, 3, 4], design: [[1, 0], [1, 0], [1, 1], [1, 1]]}).failed // => 'separation'
 * @example poissonGlm({counts: [2, 5, 3], design: [[1, 1], [1, 1], [1, 1]]}).failed // => 'not estimable'
 */
export function poissonGlm(data: CountData): CountModel {
  const unusable = reasonAgainstFitting(data)
  if (unusable) return failure(unusable)
  return countModel(
    data,
    iteratedWeightedRegression(data, Number.POSITIVE_INFINITY, startingMeans(data)),
    Number.POSITIVE_INFINITY
  )
}

/** Counts moved off 0, where their logarithm would not exist. */
export function startingMeans({counts}: CountData): number[] {
  return counts.map((count) => count + 0.1)
}

/** Why data cannot be fitted whatever the distribution; undefined where they can. */
export function reasonAgainstFitting({
  counts,
  design,
  offset
}: CountData): 'no catch' | 'not estimable' | undefined {
  if (design.length !== counts.length || (offset && offset.length !== counts.length)) {
    throw new RangeError('counts, design and offset differ in length')
  }
  if (!counts.every((count) => Number.isSafeInteger(count) && count >= 0)) {
    throw new RangeError('a model of counts takes whole numbers from 0 on')
  }
  if (offset && !offset.every(Number.isFinite)) throw new RangeError('every unit needs effort above 0')
  if (counts.every((count) => count === 0)) return 'no catch'
  const columns = design[0]!.length
  if (counts.length <= columns) return 'not estimable'
  const {rank} = new SingularValueDecomposition(new Matrix(design.map((row) => [...row])))
  return rank < columns ? 'not estimable' : undefined
}
