import {isDefined} from '../../src/model/quantity.ts'
import {indicatorValueTest} from '../../src/statistics/indicator-value-test.ts'
import {type RandomStream, randomStream} from '../../src/statistics/random-stream.ts'
import {logNormalShares, pooled, simulateCommunity} from './community.ts'
import {attainable, isSmall, level} from './level.ts'
import type {Section} from './section.ts'
import {percent, percentWithError, tally} from './tally.ts'

const limit = 999
const seasons = 1000

const designs = [
  {name: '2 x 6', sites: [6, 6], species: 20},
  {name: '3 x 3', sites: [3, 3, 3], species: 12},
  {name: '3 x 5', sites: [5, 5, 5], species: 25}
] as const

/** How often indicator values are significant where no species prefers a habitat. */
export function indicatorLevels(seed: number): readonly Section[] {
  return [
    {
      title: 'Indicator values, no species prefers a habitat',
      about: [
        `${seasons} seasons a row, site shape 1 for every species by itself; at most ${limit} arrangements. 'One species': share of
all species tested whose unadjusted p is at most ${level}; its ties, of rare species above all, keep it below the attainable
level. 'Any species': share of seasons in which a Holm-adjusted p is, wanted at most ${level}.`
      ],
      head: [
        'habitats x sites',
        'species',
        'attainable %',
        'one species %',
        'any species, adjusted %',
        'at most 5 %',
        'seasons without p'
      ],
      rows: designs.map(({name, sites, species}) => {
        const shares = logNormalShares(species, 1.2)
        const tests = [...randomStream(seed, `indicator/${name}`).replicates(0, seasons)].map((season) =>
          testOf(sites, shares, season)
        )
        const one = tally(tests.flatMap((test) => test.species.map(({p}) => isSmall(p))))
        const any = tally(
          tests.map((test) =>
            test.withheld ? undefined : test.species.some(({adjustedP}) => isSmall(adjustedP) === true)
          )
        )
        return [
          name,
          `${species}`,
          percent(attainable(tests[0]!.scheme)),
          // Species of one season are not independent of its permutations, so that no error is given.
          percent(one.hits / one.of),
          percentWithError(any),
          any.hits / any.of <= level ? 'yes' : '**no**',
          `${tests.filter((test) => test.species.every(({p}) => !isDefined(p))).length}`
        ]
      }),
      findings: [
        `Holds: Holm's adjustment over species keeps the season's risk of any false indicator below ${level}, far below where the
smallest p times the species only just passes.`
      ]
    }
  ]
}

function testOf(sites: readonly number[], shares: readonly number[], season: RandomStream) {
  const groups = sites.flatMap((count, group) => Array<number>(count).fill(group))
  const rates = sites.flatMap((count) =>
    simulateCommunity({shares, sites: count, rate: 0.2, siteShape: 1}, season).map(({traps, effort}) =>
      pooled(traps).map((caught) => caught / effort)
    )
  )
  return indicatorValueTest(
    shares.map((_, species) => rates.map((row) => row[species]!)),
    groups,
    {limit, random: season}
  )
}
