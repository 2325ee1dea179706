import {dispersionTest} from '../../src/statistics/dispersion-test.ts'
import {permutationTest} from '../../src/statistics/permutation-test.ts'
import {permutations} from '../../src/statistics/permutations.ts'
import {type RandomStream, randomStream} from '../../src/statistics/random-stream.ts'
import {normalDraw} from './draws.ts'
import {attainable, isSmall} from './level.ts'
import {sum} from './season.ts'
import type {Section} from './section.ts'
import {percent, percentWithError, tally} from './tally.ts'

const seasons = 2000
const limit = 499
const variables = 5

const designs = [
  {habitats: 2, sites: 4},
  {habitats: 2, sites: 6},
  {habitats: 3, sites: 3},
  {habitats: 2, sites: 10},
  {habitats: 2, sites: 20}
] as const

/** What makes the dispersion test reject too often: neither clumping nor Bray-Curtis, but centroids of few sites. */
export function dispersionReason(seed: number): Section {
  return {
    title: 'What makes the dispersion test reject too often',
    about: [
      `${seasons} seasons a row, at most ${limit} arrangements: sites are points of ${variables} independent normal variables with Euclidean
distances and equal spread, so that neither clumping nor the measure is at fault. 'Residuals' is the test that reports print, which
permutes deviations from centroids that are themselves means of the few sites; 'true centres' permutes distances from
centres that are known, as no study knows them, and is exact.`
    ],
    head: ['habitats', 'sites each', 'attainable %', 'residuals %', 'true centres %'],
    rows: designs.map(({habitats, sites}) => {
      const stream = randomStream(seed, `dispersion reason/${habitats}/${sites}`)
      const tests = [...stream.replicates(0, seasons)].map((season) => testsOf(habitats, sites, season))
      return [
        `${habitats}`,
        `${sites}`,
        percent(attainable(tests[0]!.residuals.scheme)),
        percentWithError(tally(tests.map(({residuals}) => isSmall(residuals.p)))),
        percentWithError(tally(tests.map(({known}) => isSmall({value: known.p}))))
      ]
    }),
    findings: [
      `Missed at few sites because permuting residuals is exact only as centroids become known: deviations of three or four sites
from their own mean add up to nothing, which makes them more alike within a habitat than the permuted ones are. From about ten
sites a habitat on the test does what it promises.`
    ]
  }
}

function testsOf(habitats: number, sites: number, season: RandomStream) {
  const groups = Array.from({length: habitats * sites}, (_, site) => Math.floor(site / sites))
  const points = groups.map(() => Array.from({length: variables}, () => normalDraw(season)))
  const apart = points.map((first) =>
    points.map((second) => Math.hypot(...first.map((value, axis) => value - second[axis]!)))
  )
  const plan = permutations(groups, {limit, random: season})
  const fromCentre = points.map((point) => Math.hypot(...point))
  return {
    residuals: dispersionTest(apart, groups, {limit, random: season}),
    known: permutationTest({
      permutations: plan,
      statistic: (arrangement) => betweenGroups(fromCentre, arrangement, habitats),
      tolerance: 1e-9
    })
  }
}

/** Sum of squares between groups of one size, which orders the arrangements as F does. */
function betweenGroups(values: readonly number[], arrangement: readonly number[], groups: number): number {
  const sums = Array.from({length: groups}, () => 0)
  for (const [site, group] of arrangement.entries()) sums[group]! += values[site]!
  return sum(sums.map((total) => total ** 2)) / values.length
}
