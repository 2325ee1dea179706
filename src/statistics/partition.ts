import type {Quantity} from '../model/quantity.ts'

/** Diversity within, between and over communities, in effective species and effective communities. */
export interface DiversityPartition {
  /** Mean effective species of a community. */
  readonly alpha: Quantity
  /** Effective number of communities, from 1 (alike) to the number of communities (nothing shared). */
  readonly beta: Quantity
  /** Effective species of all communities together, each weighing the same. */
  readonly gamma: Quantity
}

/**
 * Multiplicative partition of diversity of order q over communities of equal weight: gamma = alpha x beta.
 *
 * Formula: N communities with shares p_ij of species i in community j: gamma is the Hill number of the mean shares;
 * alpha = ((1/N) sum_j sum_i p_ij^q)^(1/(1-q)), at q = 1 exp of the mean Shannon entropy; beta = gamma/alpha.
 *
 * Source: Jost 2007, Ecology 88:2427-2439.
 *
 * Edge cases: rows are communities and columns the same species in every row, counts or rates. Without communities,
 * or with an empty one, nothing is defined. Beta of order 0 carries the caution that species missed in a community
 * inflate it. A negative order, or rows of unequal length, are our own bug: RangeError.
 *
 * @example partition([[5, 5, 0, 0], [0, 0, 5, 5]], 1).beta // => {value: 2}
 * @example partition([[4, 4, 2], [4, 4, 2]], 2).beta // => {value: 1}
 * @example partition([[1, 1, 0], [1, 0, 0]], 0).alpha // => {value: 1.5}
 * @example partition([[3], [0]], 1).gamma // => {notDefined: 'one of the communities is empty'}
 */
export function partition(communities: readonly (readonly number[])[], order: number): DiversityPartition {
  if (!(order >= 0 && Number.isFinite(order))) throw new RangeError(`${order} is not an order of diversity`)
  const totals = communities.map((counts) => counts.reduce((sum, count) => sum + count, 0))
  if (communities.length === 0) return nothing('there are no communities')
  if (totals.some((total) => total === 0)) return nothing('one of the communities is empty')
  const species = communities[0]!.length
  if (communities.some((counts) => counts.length !== species)) throw new RangeError('rows of unequal length')

  const shares = communities.map((counts, j) => counts.map((count) => count / totals[j]!))
  const pooled = Array.from(
    {length: species},
    (_, i) => shares.reduce((sum, row) => sum + row[i]!, 0) / shares.length
  )
  const gamma = diversityFrom(moment(pooled, order), order)
  const alpha = diversityFrom(shares.reduce((sum, row) => sum + moment(row, order), 0) / shares.length, order)
  const beta = gamma / alpha
  return {
    alpha: {value: alpha},
    beta: order === 0 ? {value: beta, caution: 'under-sampling inflates beta of order 0'} : {value: beta},
    gamma: {value: gamma}
  }
}

function nothing(notDefined: string): DiversityPartition {
  return {alpha: {notDefined}, beta: {notDefined}, gamma: {notDefined}}
}

/** What averages over communities: entropy at order 1, the sum of powers elsewhere. */
function moment(shares: readonly number[], order: number): number {
  return shares.reduce((sum, p) => {
    if (p === 0) return sum
    return sum + (order === 1 ? -p * Math.log(p) : p ** order)
  }, 0)
}

function diversityFrom(mean: number, order: number): number {
  return order === 1 ? Math.exp(mean) : mean ** (1 / (1 - order))
}
