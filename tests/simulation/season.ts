import type {GroupedCounts} from '../../src/statistics/likelihood-ratio-permutation.ts'
import type {RandomStream} from '../../src/statistics/random-stream.ts'
import {gammaDraw, normalDraw, poissonDraw} from './draws.ts'

/** One habitat of an invented study. */
export interface HabitatPlan {
  readonly sites: number
  /** Individuals per trap-night, over many sites of the habitat. */
  readonly rate: number
  /** Fewest and most traps of a site. */
  readonly traps?: readonly [fewest: number, most: number]
}

export interface SeasonPlan {
  readonly habitats: readonly HabitatPlan[]
  /** Shape of the gamma distribution of sites about their habitat: small is clumped, infinite not at all. */
  readonly siteShape: number
  /** Site i of every habitat lies in block i; standard deviation of the logarithms of the blocks. */
  readonly blockDeviation?: number
}

/** Traps of one site share its gamma draw and have one of their own: they are correlated within sites. */
export const trapShape = 4

const usualTraps = [4, 8] as const

/** Six fortnights, each of which a trap may lose. */
const fortnights = 6
const chanceOfLoss = 0.1

/**
 * The catch and effort of each site of one season. Catches of sites are negative binomial about the rate of their
 * habitat (a gamma draw of each site), made more so by the traps; effort differs by traps and by losses.
 */
export function simulateSeason(
  {habitats, siteShape, blockDeviation}: SeasonPlan,
  stream: RandomStream
): GroupedCounts {
  const most = Math.max(...habitats.map(({sites}) => sites))
  const blockEffects = Array.from({length: most}, () =>
    blockDeviation === undefined ? 1 : Math.exp(blockDeviation * normalDraw(stream))
  )
  const sites = habitats.flatMap(({sites: count, rate, traps}, group) =>
    Array.from({length: count}, (_, site) => {
      const level = rate * blockEffects[site]! * gammaDraw(stream, siteShape)
      const efforts = trapNights(stream, traps)
      const caught = efforts.map((nights) =>
        poissonDraw(stream, level * nights * gammaDraw(stream, trapShape))
      )
      return {group, block: site, count: sum(caught), effort: sum(efforts)}
    })
  )
  return {
    counts: sites.map(({count}) => count),
    efforts: sites.map(({effort}) => effort),
    groups: sites.map(({group}) => group),
    ...(blockDeviation !== undefined && {blocks: sites.map(({block}) => block)})
  }
}

/** Net trap-nights of each trap of a site; never none. */
export function trapNights(
  stream: RandomStream,
  [fewest, most]: readonly [number, number] = usualTraps
): readonly number[] {
  const traps = fewest + stream.integer(most - fewest + 1)
  return Array.from({length: traps}, () => {
    let kept = 1
    for (let round = 1; round < fortnights; round += 1) if (stream.uniform() >= chanceOfLoss) kept += 1
    return 14 * kept
  })
}

export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
