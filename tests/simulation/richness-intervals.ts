import {ace} from '../../src/statistics/ace.ts'
import {frequencyCounts, incidenceCounts} from '../../src/statistics/frequency-counts.ts'
import {ice} from '../../src/statistics/ice.ts'
import {jackknife1} from '../../src/statistics/jackknife-1.ts'
import {jackknife2} from '../../src/statistics/jackknife-2.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {type CommunityPlan, pooled, simulateCommunity} from './community.ts'
import {cell, scenarios} from './diversity-intervals.ts'
import type {Estimate} from './diversity-season.ts'
import type {Section} from './section.ts'

const seasons = 3000

/** How often the intervals of the other estimators of richness hold the number of species. */
export function richnessIntervals(seed: number): readonly Section[] {
  const columns = scenarios.map(({name, plan}) =>
    Array.from({length: seasons}, (_, season) => estimatesOfSeason(seed, `${name}/${season}`, plan))
  )
  const quantities = columns[0]![0]!.map(({quantity}) => quantity)
  return [
    {
      title: 'Other estimators of the number of species, 95 % intervals',
      about: [
        `${seasons} seasons a column, of the same assemblages of 60 species; ICE and the jackknives over traps. Reports print these
with their intervals in a table of the appendix, each with its kind and never as the number of species.`
      ],
      head: ['quantity', 'random', 'random, more even', 'clumped, shape 2', 'clumped, shape 0.5'],
      rows: quantities.map((quantity, index) => [
        quantity,
        ...columns.map((column) => cell(column.map((estimates) => estimates[index]!)))
      ]),
      findings: [
        `**Missed** where species are very unequal: the number of species lies above the interval of ACE in 19 %, of ICE in 16 % and of the
first-order jackknife in 34 % of seasons; the second-order jackknife is the nearest. Where species are more even all hold 92 to 96 %.
Clumped catches make it worse. Why: all of them stand below what rare species leave unseen, and their intervals tell how much the
estimate varies and not how far below it stands.`
      ]
    }
  ]
}

function estimatesOfSeason(seed: number, name: string, plan: CommunityPlan): readonly Estimate[] {
  const traps = simulateCommunity(plan, randomStream(seed, `richness/${name}`)).flatMap((site) => site.traps)
  const caught = pooled(traps)
  const held = caught.map((_, species) => traps.filter((trap) => trap[species]! > 0).length)
  const units = incidenceCounts(held, traps.length)
  const truth = plan.shares.length
  return [
    {quantity: 'ACE', ours: ace(frequencyCounts(caught)), truth},
    {quantity: 'ICE', ours: ice(traps.map((trap) => trap.map((count) => count > 0))), truth},
    {quantity: 'jackknife 1', ours: jackknife1(units), truth},
    {quantity: 'jackknife 2', ours: jackknife2(units), truth}
  ]
}
