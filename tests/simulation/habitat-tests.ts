import {isDefined} from '../../src/model/quantity.ts'
import {kruskalWallisPermutation} from '../../src/statistics/kruskal-wallis-permutation.ts'
import {likelihoodRatioPermutation} from '../../src/statistics/likelihood-ratio-permutation.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {chiSquareUpperTail} from '../../src/statistics/special-functions.ts'
import {level, levelCells} from './level.ts'
import {type SeasonPlan, simulateSeason} from './season.ts'
import type {Section} from './section.ts'
import {percentWithError, tally} from './tally.ts'

const rate = 0.15

/** As many fits as a report pays for. */
const limit = 999

interface Design extends SeasonPlan {
  readonly name: string
  readonly seasons: number
}

const same = (habitats: number, sites: number) => Array.from({length: habitats}, () => ({sites, rate}))

const designs: readonly Design[] = [
  {name: '2 x 3', habitats: same(2, 3), siteShape: 2, seasons: 2000},
  {name: '2 x 4', habitats: same(2, 4), siteShape: 2, seasons: 3000},
  {name: '2 x 5', habitats: same(2, 5), siteShape: 2, seasons: 3000},
  {name: '2 x 5, site shape 1', habitats: same(2, 5), siteShape: 1, seasons: 3000},
  {name: '2 x 6', habitats: same(2, 6), siteShape: 2, seasons: 2000},
  {name: '3 x 3', habitats: same(3, 3), siteShape: 2, seasons: 2000},
  {name: '3 x 4', habitats: same(3, 4), siteShape: 2, seasons: 800},
  {name: '3 + 6', habitats: [...same(1, 3), ...same(1, 6)], siteShape: 2, seasons: 3000},
  {
    name: '2 x 5, few animals',
    habitats: same(2, 5).map((habitat) => ({...habitat, rate: 0.01})),
    siteShape: 2,
    seasons: 3000
  },
  {
    name: '2 x 5, three times the traps in one',
    habitats: [
      {sites: 5, rate, traps: [9, 15]},
      {sites: 5, rate, traps: [3, 5]}
    ],
    siteShape: 2,
    seasons: 3000
  },
  {
    name: '2 x 5, few animals, three times the traps in one',
    habitats: [
      {sites: 5, rate: 0.01, traps: [9, 15]},
      {sites: 5, rate: 0.01, traps: [3, 5]}
    ],
    siteShape: 2,
    seasons: 3000
  },
  {name: '2 x 6 in blocks', habitats: same(2, 6), siteShape: 2, blockDeviation: 0.6, seasons: 3000},
  {name: '3 x 4 in blocks', habitats: same(3, 4), siteShape: 2, blockDeviation: 0.6, seasons: 1500}
]

/** How often the tests of activity-density reject where habitats do not differ. */
export function habitatTests(seed: number): readonly Section[] {
  return [
    {
      title: 'Test of a difference in activity-density, no difference there',
      about: [
        `Rejected: p at most ${level}; wanted 4 to 6 %. An exact test rejects in the 'attainable' share of seasons,
the largest multiple of its smallest p up to ${level}; where that is below 4 % the test is to be there. The test is the
permuted likelihood ratio of the negative binomial model, at most ${limit} arrangements. 'Chi-square' is the p of the
same statistic from the chi-square distribution, which reports do not print; 'ranks' is the permuted Kruskal-Wallis test
of rates, the fallback, whose ties make it reject less often than it might.`
      ],
      head: [
        'habitats x sites',
        'seasons',
        'smallest p',
        'attainable %',
        'rejected %',
        '4 to 6 %',
        'chi-square %',
        'ranks %',
        'no model'
      ],
      rows: designs.map((design) => {
        const outcomes = [
          ...randomStream(seed, `habitat test/${design.name}`).replicates(0, design.seasons)
        ].map((season) => {
          const data = simulateSeason(design, season)
          const {counts, efforts, groups, blocks} = data
          const test = likelihoodRatioPermutation(data, {limit, random: season})
          const ranks = kruskalWallisPermutation(
            counts.map((count, site) => count / efforts[site]!),
            groups,
            {limit, random: season, ...(blocks && {blocks})}
          )
          return {test, ranks}
        })
        const tests = outcomes.map(({test}) => test)
        return [
          design.name,
          `${design.seasons}`,
          ...levelCells(tests),
          percentWithError(
            tally(
              tests.map(({statistic, degreesOfFreedom}) =>
                isDefined(statistic)
                  ? chiSquareUpperTail(statistic.value, degreesOfFreedom) <= level
                  : undefined
              )
            )
          ),
          levelCells(outcomes.map(({ranks}) => ranks))[2]!,
          `${tests.filter(({p}) => !isDefined(p)).length}`
        ]
      }),
      findings: [
        `Holds: 4 to 6 % wherever the steps of p allow it, and what they allow elsewhere, also where one habitat has three times the
effort. The chi-square p of the same statistic would reject 8 to 15 %, and in blocks 21 %.`
      ]
    }
  ]
}
