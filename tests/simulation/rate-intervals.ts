import {isDefined} from '../../src/model/quantity.ts'
import {garwoodInterval} from '../../src/statistics/garwood-interval.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {ratioRate} from '../../src/statistics/ratio-rate.ts'
import {simulateSeason, sum} from './season.ts'
import type {Section} from './section.ts'
import {percentWithError, tally, verdict} from './tally.ts'

const seasons = 20_000

const scenarios = [
  {name: 'site shape 1', siteShape: 1, rate: 0.15},
  {name: 'site shape 2', siteShape: 2, rate: 0.15},
  {name: 'site shape 5', siteShape: 5, rate: 0.15},
  {name: 'site shape 2, few animals', siteShape: 2, rate: 0.02}
] as const

/** How often the interval of a habitat's rate holds the rate of the habitat. */
export function rateIntervals(seed: number): readonly Section[] {
  const cells = [3, 4, 5, 6].flatMap((sites) =>
    scenarios.map((scenario) => ({sites, ...scenario, ...coverageOf(seed, sites, scenario)}))
  )
  return [
    {
      title: 'Rate of a habitat, 95 % interval',
      about: [
        `${seasons} seasons a row. 'Ratio' is the interval between sampling units that reports print (wanted: 93 to
97 %); 'Garwood' is the exact Poisson interval of the same catch, which reports print for a single unit and call
'counting error only, not a range for the habitat'. 'Below' and 'above': the rate lies below, or above, the ratio
interval.`
      ],
      head: ['sites', 'scenario', 'catch a site', 'ratio', 'below', 'above', '93 to 97 %', 'Garwood'],
      rows: cells.map(({sites, name, mean, holds, below, above, poisson}) => [
        `${sites}`,
        name,
        mean.toFixed(0),
        percentWithError(holds),
        percentWithError(below),
        percentWithError(above),
        verdict(holds, 0.93, 0.97),
        percentWithError(poisson)
      ]),
      findings: [
        `Holds: 93 to 95 %, just under where sites are as unlike as an exponential distribution makes them (shape 1) and five or six
of them make t smaller. Misses are on one side, the rate above the interval: sites that happen to catch little also happen to differ
little, so that an interval after a poor season is both low and narrow. Counting error alone would hold the rate of the habitat in 18
to 59 % of seasons.`
      ]
    }
  ]
}

function coverageOf(
  seed: number,
  sites: number,
  {name, siteShape, rate}: {readonly name: string; readonly siteShape: number; readonly rate: number}
) {
  const stream = randomStream(seed, `rate interval/${sites}/${name}`)
  const outcomes = [...stream.replicates(0, seasons)].map((season) => {
    const {counts, efforts} = simulateSeason({habitats: [{sites, rate}], siteShape}, season)
    const units = counts.map((count, site) => ({count, effort: efforts[site]!}))
    const result = ratioRate(units)
    const {low, high} = garwoodInterval(sum(counts))
    const effort = sum(efforts)
    return {
      caught: sum(counts) / sites,
      interval: isDefined(result) ? result.interval : undefined,
      poisson: low / effort <= rate && rate <= high / effort
    }
  })
  return {
    mean: sum(outcomes.map(({caught}) => caught)) / seasons,
    holds: tally(outcomes.map(({interval}) => interval && interval.low <= rate && rate <= interval.high)),
    below: tally(outcomes.map(({interval}) => interval && rate < interval.low)),
    above: tally(outcomes.map(({interval}) => interval && rate > interval.high)),
    poisson: tally(outcomes.map(({poisson}) => poisson))
  }
}
