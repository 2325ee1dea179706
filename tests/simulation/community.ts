import type {RandomStream} from '../../src/statistics/random-stream.ts'
import {normalQuantile} from '../../src/statistics/special-functions.ts'
import {gammaDraw, poissonDraw} from './draws.ts'
import {sum, trapNights, trapShape} from './season.ts'

/** Shares of the species of an invented assemblage: the log-normal distribution with this standard deviation. */
export function logNormalShares(species: number, deviation: number): readonly number[] {
  const weights = Array.from({length: species}, (_, i) =>
    Math.exp(deviation * normalQuantile((i + 0.5) / species))
  )
  return weights.map((weight) => weight / sum(weights))
}

export interface CommunityPlan {
  /** Of each species in the habitat, over many sites. */
  readonly shares: readonly number[]
  readonly sites: number
  /** Individuals of all species per trap-night. */
  readonly rate: number
  /** Shape of the gamma distribution of a species over sites, each species by itself; infinite is not clumped. */
  readonly siteShape: number
}

/** What the traps of one site caught: a list of species for each trap, and its nights. */
export interface SiteCatch {
  readonly effort: number
  readonly traps: readonly (readonly number[])[]
}

/**
 * Catches of the sites of one habitat. Every species has a gamma draw at each site, and another at each trap of
 * it: where they are infinite, the catch is a random sample of the habitat's assemblage.
 */
export function simulateCommunity(
  {shares, sites, rate, siteShape}: CommunityPlan,
  stream: RandomStream
): readonly SiteCatch[] {
  const perTrap = siteShape === Number.POSITIVE_INFINITY ? siteShape : trapShape
  return Array.from({length: sites}, () => {
    const levels = shares.map((share) => share * rate * gammaDraw(stream, siteShape))
    const nights = trapNights(stream)
    return {
      effort: sum(nights),
      traps: nights.map((effort) =>
        levels.map((level) => poissonDraw(stream, level * effort * gammaDraw(stream, perTrap)))
      )
    }
  })
}

/** Individuals by species of several traps, or sites, together. */
export function pooled(catches: readonly (readonly number[])[]): readonly number[] {
  return catches[0]!.map((_, species) => sum(catches.map((counts) => counts[species]!)))
}
