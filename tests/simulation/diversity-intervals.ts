import {isDefined, type Quantity} from '../../src/model/quantity.ts'
import {bootstrapReplicates} from '../../src/statistics/bootstrap-replicates.ts'
import {chao2} from '../../src/statistics/chao2.ts'
import {curveStatistics, diversityCurve} from '../../src/statistics/diversity-curve.ts'
import {coverageStatistics, diversityAtCoverage} from '../../src/statistics/diversity-at-coverage.ts'
import {frequencyCounts, incidenceCounts} from '../../src/statistics/frequency-counts.ts'
import {asymptoticStatistics, hillAsymptoticIntervals} from '../../src/statistics/hill-asymptotic-intervals.ts'
import {randomStream, type ReplicatedStream} from '../../src/statistics/random-stream.ts'
import {type CommunityPlan, logNormalShares, pooled, simulateCommunity} from './community.ts'
import {sum} from './season.ts'
import type {Section} from './section.ts'
import {type Tally, percentWithError, tally, verdict} from './tally.ts'
import {expectedOfSample, hillOf, sizeCovering} from './true-diversity.ts'

const seasons = 600
const replicates = 150
const target = 0.9

const shares = logNormalShares(60, 1.6)
const usual = {shares, sites: 4, rate: 0.2}

const scenarios: readonly {readonly name: string; readonly plan: CommunityPlan}[] = [
  {name: 'not clumped', plan: {...usual, siteShape: Number.POSITIVE_INFINITY}},
  {name: 'site shape 2', plan: {...usual, siteShape: 2}},
  {name: 'site shape 0.5', plan: {...usual, siteShape: 0.5}}
]

/** How often intervals of diversity hold the diversity of the habitat, and that of what these sites hold. */
export function diversityIntervals(seed: number): Section {
  const columns = scenarios.map(({name, plan}) => ({name, outcomes: outcomesOf(seed, name, plan)}))
  const quantities = [...columns[0]!.outcomes.keys()]
  return {
    title: 'Diversity and coverage of a habitat, 95 % intervals from the assemblage bootstrap',
    about: [
      `${seasons} seasons a column, ${replicates} bootstrap replicates each; 4 sites of 4 to 8 traps, about 480
individuals pooled, of ${shares.length} species with log-normal shares (standard deviation 1.6). 'Of the assemblage':
the catch is a random sample of the habitat, for which the bootstrap is made. 'Of the habitat, clumped': every species has
its own gamma draw at each site (shape 2, 0.5) and trap (shape 4), and the interval is asked for the diversity of the
habitat. Wanted for the assemblage: 93 to 97 %; reports say that the intervals describe the pooled catch of these sites and
are too narrow where animals are clumped, and this is by how much. 'n' is the number caught.`
    ],
    head: ['quantity', 'of the assemblage', '93 to 97 %', 'of the habitat, clumped (shape 2)', '(shape 0.5)'],
    rows: quantities.map((quantity) => {
      const tallies: readonly Tally[] = columns.map(({outcomes}) => tally(outcomes.get(quantity)!))
      return [
        quantity,
        percentWithError(tallies[0]!),
        verdict(tallies[0]!, 0.93, 0.97),
        percentWithError(tallies[1]!),
        percentWithError(tallies[2]!)
      ]
    }),
    findings: []
  }
}

type Outcomes = Map<string, (boolean | undefined)[]>

function outcomesOf(seed: number, name: string, plan: CommunityPlan): Outcomes {
  const outcomes: Outcomes = new Map()
  const note = (quantity: string, outcome: boolean | undefined): void => {
    outcomes.set(quantity, [...(outcomes.get(quantity) ?? []), outcome])
  }
  const asymptote = hillOf(plan.shares)
  const atTarget = expectedOfSample(plan.shares, sizeCovering(plan.shares, target))
  for (let season = 0; season < seasons; season += 1) {
    const stream = randomStream(seed, `diversity/${name}/${season}`)
    const sites = simulateCommunity(plan, stream)
    const traps = sites.flatMap((site) => site.traps)
    const caught = pooled(traps)
    const sample = frequencyCounts(caught)
    const n = sample.size
    const rows = bootstrapsOf(sample, randomStream(seed, `replicates/${name}/${season}`), n)
    const [here, twice] = diversityCurve(sample, [n, 2 * n], rows.curve)
    const seen = sum(plan.shares.filter((_, species) => caught[species]! > 0))
    note('coverage at n', holds(here!.coverage, seen))
    for (const [label, point, size] of [['n', here!, n] as const, ['2n', twice!, 2 * n] as const]) {
      const truth = expectedOfSample(plan.shares, size)
      for (const order of [0, 1, 2] as const) note(`q = ${order} at ${label}`, holds(point[`q${order}`], truth[order]))
    }
    const covered = diversityAtCoverage(sample, target, rows.covered)
    for (const order of [0, 1, 2] as const) {
      note(`q = ${order} at coverage ${target}`, holds(covered[`q${order}`], atTarget[order]))
    }
    const asymptotic = hillAsymptoticIntervals(sample, rows.asymptotic)
    note('Chao1 interval holds all species', holds(asymptotic.q0, asymptote[0]))
    note('Chao1 estimate at most all species', isDefined(asymptotic.q0) ? asymptotic.q0.value <= asymptote[0] : undefined)
    note('asymptotic q = 1', holds(asymptotic.q1, asymptote[1]))
    note('asymptotic q = 2', holds(asymptotic.q2, asymptote[2]))
    const units = caught.map((_, species) => traps.filter((trap) => trap[species]! > 0).length)
    note('Chao2 interval (traps as units) holds all species', holds(chao2(incidenceCounts(units, traps.length)), asymptote[0]))
  }
  return outcomes
}

function bootstrapsOf(sample: ReturnType<typeof frequencyCounts>, stream: ReplicatedStream, n: number) {
  const curve = curveStatistics([n, 2 * n])
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

function holds(quantity: Quantity, truth: number): boolean | undefined {
  if (!isDefined(quantity) || quantity.interval === undefined) return undefined
  return quantity.interval.low <= truth && truth <= quantity.interval.high
}
