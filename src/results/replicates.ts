import type {Rows, RowsOfParts, SplitWork} from '../model/split-work.ts'
import {bootstrapReplicates} from '../statistics/bootstrap-replicates.ts'
import {diversityAlongCoverage} from '../statistics/coverage-curve.ts'
import {coverageStatistics} from '../statistics/diversity-at-coverage.ts'
import {curveStatistics} from '../statistics/diversity-curve.ts'
import type {FrequencyCounts} from '../statistics/frequency-counts.ts'
import {asymptoticStatistics} from '../statistics/hill-asymptotic-intervals.ts'
import {randomStream} from '../statistics/random-stream.ts'

/** The bootstrap of one assemblage: plain data, so that it can be handed to another thread. */
export interface ReplicateTask {
  readonly sample: FrequencyCounts
  readonly seed: number
  /** Names the quantity and whose it is, so that no other assemblage changes its draws. */
  readonly stream: string
  readonly replicates: number
  /** Sizes at which curves get their standard errors; the reference size is one of them. */
  readonly sizes: readonly number[]
  /** Coverages at which they do. */
  readonly coverages: readonly number[]
  /** The coverage at which habitats are compared; absent where there is none. */
  readonly commonCoverage: number | undefined
}

/** One row a replicate, in the columns of `replicateColumns`; empty for a replicate without any species. */
export type Replicates = Rows

/** Who computes replicates. A runner may split a task by ranges of replicates: joined in order they are the same. */
export type Runner = (task: ReplicateTask) => Replicates

/** All in one go, here and now. */
export const plainRunner: Runner = (task) => replicatesOf(task, 0, task.replicates)

/** Once a study has cost so many seconds, it pays to start threads for the rest. */
const worthThreads = 0.3

/** A runner that shares replicates out, as soon as a study has enough of them. */
export function splitRunner(split: SplitWork): Runner {
  let spent = 0
  return (task) => {
    const {replicates, sample, sizes} = task
    // Seconds, as measured on a machine of 2024; they decide who computes, never what.
    spent += replicates * (4e-5 + 5e-8 * sample.classes.length * sizes.length)
    return spent < worthThreads ? plainRunner(task) : split(task, replicates, replicateRanges(task))
  }
}

/** The replicates first ... end - 1 of a task. */
export function replicatesOf(task: ReplicateTask, first: number, end: number): Replicates {
  return replicateRanges(task)(first, end)
}

/** The replicates of a task, range by range; what one range needed the next one has at hand. */
export function replicateRanges(task: ReplicateTask): RowsOfParts {
  const {sample, seed, stream, sizes, coverages, commonCoverage} = task
  const alongSizes = curveStatistics(sizes)
  const atCommon = commonCoverage === undefined ? () => [] : coverageStatistics(commonCoverage)
  const columns = replicateColumns(task)
  return (first, end) => {
    // One block for the rows of a range: thousands of them apart would be as many things to collect and to send.
    const block = new Float64Array(Math.max(0, end - first) * columns.inAll)
    let used = 0
    return bootstrapReplicates(sample, randomStream(seed, stream), first, end, (drawn) => {
      const row = block.subarray(used, used + columns.inAll)
      used += columns.inAll
      const curve = alongSizes(drawn)
      row.set(asymptoticStatistics(drawn), columns.asymptotic)
      row.set(curve, columns.curve)
      row.set(diversityAlongCoverage(drawn, sizes, curve, coverages), columns.coverageCurve)
      row.set(atCommon(drawn), columns.common)
      return row
    })
  }
}

/** Where the columns of each part of a row begin, and how many there are. */
export function replicateColumns({
  sizes,
  coverages,
  commonCoverage
}: Pick<ReplicateTask, 'sizes' | 'coverages' | 'commonCoverage'>) {
  const curve = 2
  const coverageCurve = curve + 4 * sizes.length
  const common = coverageCurve + 3 * coverages.length
  return {asymptotic: 0, curve, coverageCurve, common, inAll: common + (commonCoverage === undefined ? 0 : 3)}
}
