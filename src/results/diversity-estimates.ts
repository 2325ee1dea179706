import {isDefined, type Quantity} from '../model/quantity.ts'
import {bootstrapStandardErrors} from '../statistics/bootstrap-standard-errors.ts'
import {coverage} from '../statistics/coverage.ts'
import {coverageAtSize, expectedCoverage} from '../statistics/coverage-at-size.ts'
import {curveSizes} from '../statistics/curve-sizes.ts'
import {type DiversityAtCoverage, diversityAtCoverage} from '../statistics/diversity-at-coverage.ts'
import {diversityShape} from '../statistics/diversity-curve.ts'
import type {FrequencyCounts} from '../statistics/frequency-counts.ts'
import {type AsymptoticDiversity, hillAsymptotic} from '../statistics/hill-asymptotic.ts'
import {hillAsymptoticIntervals} from '../statistics/hill-asymptotic-intervals.ts'
import {rarefactionAndExtrapolation} from '../statistics/rarefaction-and-extrapolation.ts'
import {withBootstrapInterval} from '../statistics/with-bootstrap-interval.ts'
import type {Analysis} from './analysis.ts'
import {type Replicates, type ReplicateTask, type Runner, replicateColumns} from './replicates.ts'

export type Order = 0 | 1 | 2
export const orders: readonly Order[] = [0, 1, 2]

/** Points of a curve; a band is there for all or for none of them. */
export interface CurveOfOrder {
  readonly order: Order
  readonly points: readonly {
    readonly size: number
    readonly coverage: Quantity
    readonly bySize: Quantity
    readonly byCoverage: Quantity
  }[]
}

/** What the bootstrap adds to a sample's diversity. */
export interface DiversityEstimates {
  readonly coverage: Quantity
  readonly asymptotic: AsymptoticDiversity
  readonly curves: readonly CurveOfOrder[]
  readonly atCommonCoverage: DiversityAtCoverage | undefined
}

/** Points of a curve at which the bootstrap is asked; between them standard errors are linear. */
const knots = 16

export interface EstimatesOptions {
  readonly stream: string
  readonly commonCoverage: number | undefined
}

type Settings = Pick<Analysis, 'seed' | 'replicates' | 'confidence'>

/** Asymptotic diversity, coverage, curves and diversity at the common coverage, with intervals from one bootstrap. */
export function diversityEstimates(
  sample: FrequencyCounts,
  {stream, commonCoverage}: EstimatesOptions,
  {seed, replicates, confidence}: Settings,
  runner: Runner
): DiversityEstimates {
  const own = coverage(sample)
  const target = isDefined(own) ? commonCoverage : undefined
  const sizes = curveSizes(sample.size, knots)
  const coverages = isDefined(own) ? sizes.map((size) => Math.min(1, expectedCoverage(sample, size))) : []
  const task: ReplicateTask = {
    sample,
    seed,
    stream,
    replicates,
    sizes,
    coverages,
    commonCoverage: target
  }
  const rows = isDefined(own) ? runner(task) : []
  const columns = replicateColumns(task)
  const errors = bootstrapStandardErrors(rows, columns.common)
  const errorOfCoverage = errors[columns.curve + 4 * sizes.indexOf(sample.size)]
  const shape = {shape: 'normal', lowest: 0, highest: 1} as const
  return {
    coverage: withBootstrapInterval(own, errorOfCoverage, shape, confidence),
    asymptotic: hillAsymptoticIntervals(sample, part(rows, columns.asymptotic, 2), confidence),
    curves: orders.map((order) => ({
      order,
      points: curvePoints(
        sample,
        order,
        sizes.map((size, knot) => ({at: size, error: errors[columns.curve + 4 * knot + 1 + order]})),
        coverages.map((at, knot) => ({at, error: errors[columns.coverageCurve + 3 * knot + order]})),
        confidence
      )
    })),
    atCommonCoverage:
      target === undefined
        ? undefined
        : diversityAtCoverage(sample, target, part(rows, columns.common, 3), confidence)
  }
}

/** The same without a bootstrap, for the many small samples of single sites. */
export function plainEstimates(
  sample: FrequencyCounts,
  commonCoverage: number | undefined,
  {confidence}: Pick<Analysis, 'confidence'>
): DiversityEstimates {
  return {
    coverage: coverage(sample),
    asymptotic: hillAsymptotic(sample, confidence),
    curves: [],
    atCommonCoverage: commonCoverage === undefined ? undefined : diversityAtCoverage(sample, commonCoverage)
  }
}

function part(rows: Replicates, from: number, columns: number): number[][] {
  return rows.map((row) => Array.from({length: columns}, (_, column) => row[from + column] ?? Number.NaN))
}

/** Standard error of a curve where the bootstrap was asked: at a size, or at a coverage. */
interface Knot {
  readonly at: number
  readonly error: number | undefined
}

function curvePoints(
  sample: FrequencyCounts,
  order: Order,
  alongSizes: readonly Knot[],
  alongCoverages: readonly Knot[],
  confidence: number
): CurveOfOrder['points'] {
  return curveSizes(sample.size).map((size) => {
    const expected = rarefactionAndExtrapolation(sample, order, size)
    const shape = diversityShape(sample, order, size)
    const reached = coverageAtSize(sample, size)
    return {
      size,
      coverage: reached,
      bySize: withBootstrapInterval(expected, errorBetween(alongSizes, size), shape, confidence),
      byCoverage: isDefined(reached)
        ? withBootstrapInterval(expected, errorBetween(alongCoverages, reached.value), shape, confidence)
        : reached
    }
  })
}

/** Linear between the knots around a place; the nearest one's outside of them. */
function errorBetween(along: readonly Knot[], at: number): number | undefined {
  const above = along.findIndex((knot) => knot.at >= at)
  const upper = along[above] ?? along.at(-1)
  const lower = along[above - 1] ?? upper
  if (upper === undefined || lower === undefined) return undefined
  if (lower.error === undefined || upper.error === undefined || upper.at === lower.at) return upper.error
  return lower.error + ((upper.error - lower.error) * (at - lower.at)) / (upper.at - lower.at)
}
