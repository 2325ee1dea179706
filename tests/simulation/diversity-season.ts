import type {Quantity} from '../../src/model/quantity.ts'
import {bootstrapReplicates} from '../../src/statistics/bootstrap-replicates.ts'
import {chao2} from '../../src/statistics/chao2.ts'
import {coverageStatistics, diversityAtCoverage} from '../../src/statistics/diversity-at-coverage.ts'
import {curveStatistics, diversityCurve} from '../../src/statistics/diversity-curve.ts'
import {
  type AbundanceCounts,
  frequencyCounts,
  incidenceCounts
} from '../../src/statistics/frequency-counts.ts'
import {
  asymptoticStatistics,
  hillAsymptoticIntervals
} from '../../src/statistics/hill-asymptotic-intervals.ts'
import {type ReplicatedStream, randomStream} from '../../src/statistics/random-stream.ts'
import {type CommunityPlan, pooled, simulateCommunity} from './community.ts'
import {sum} from './season.ts'
import {expectedCoverage, expectedOfSample, hillOf, sizeCovering} from './true-diversity.ts'

/** One quantity of one season, with what it is in truth. */
export interface Estimate {
  readonly quantity: string
  readonly ours: Quantity
  readonly truth: number
}

export const replicates = 200
const target = 0.9
const orders = [0, 1, 2] as const

/** All diversity estimates of one season of one habitat. */
export function diversityOfSeason(seed: number, name: string, plan: CommunityPlan): readonly Estimate[] {
  const {shares} = plan
  const traps = simulateCommunity(plan, randomStream(seed, `diversity/${name}`)).flatMap((site) => site.traps)
  const caught = pooled(traps)
  const sample = frequencyCounts(caught)
  const n = sample.size
  const rows = bootstraps(sample, randomStream(seed, `replicates/${name}`))
  const [here, twice] = diversityCurve(sample, [n, 2 * n], rows.curve)
  const covered = diversityAtCoverage(sample, target, rows.covered)
  const asymptotic = hillAsymptoticIntervals(sample, rows.asymptotic)
  const held = caught.map((_, species) => traps.filter((trap) => trap[species]! > 0).length)
  const asymptote = hillOf(shares)
  const atTarget = expectedOfSample(shares, sizeCovering(shares, target))
  const seen = sum(shares.filter((_, species) => caught[species]! > 0))
  return [
    {quantity: 'coverage of this catch', ours: here!.coverage, truth: seen},
    {quantity: 'mean coverage of catches of n', ours: here!.coverage, truth: expectedCoverage(shares, n)},
    ...threeOrders('n', here!, expectedOfSample(shares, n)),
    ...threeOrders('2n', twice!, expectedOfSample(shares, 2 * n)),
    ...threeOrders(`coverage ${target}`, covered, atTarget),
    {quantity: 'all species, by Chao1', ours: asymptotic.q0, truth: asymptote[0]},
    {quantity: 'asymptotic q = 1', ours: asymptotic.q1, truth: asymptote[1]},
    {quantity: 'asymptotic q = 2', ours: asymptotic.q2, truth: asymptote[2]},
    {
      quantity: 'all species, by Chao2 over traps',
      ours: chao2(incidenceCounts(held, traps.length)),
      truth: asymptote[0]
    }
  ]
}

function threeOrders(
  where: string,
  ours: Readonly<Record<`q${(typeof orders)[number]}`, Quantity>>,
  truth: readonly [number, number, number]
): readonly Estimate[] {
  return orders.map((order) => ({
    quantity: `q = ${order} at ${where}`,
    ours: ours[`q${order}`],
    truth: truth[order]
  }))
}

function bootstraps(sample: AbundanceCounts, stream: ReplicatedStream) {
  const curve = curveStatistics([sample.size, 2 * sample.size])
  const covered = coverageStatistics(target)
  const rows = bootstrapReplicates(sample, stream, 0, replicates, (drawn) => [
    ...curve(drawn),
    ...covered(drawn),
    ...asymptoticStatistics(drawn)
  ])
  return {
    curve: rows.map((row) => row.slice(0, 8)),
    covered: rows.map((row) => row.slice(8, 11)),
    asymptotic: rows.map((row) => row.slice(11))
  }
}
