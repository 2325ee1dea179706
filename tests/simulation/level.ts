import {isDefined, type Quantity} from '../../src/model/quantity.ts'
import type {PermutationScheme} from '../../src/statistics/permutations.ts'
import {percent, percentWithError, type Tally, tally, verdict} from './tally.ts'

/** What is called significant. */
export const level = 0.05

/** p as it is compared: a step of 1/distinct that rounding has put above the level is at it. */
export function isSmall(p: Quantity): boolean | undefined {
  return isDefined(p) ? p.value <= level + 1e-12 : undefined
}

/**
 * The share of seasons in which an exact test of so many arrangements can reject at the level: p goes in steps of
 * its smallest value, so that the largest step not above the level is what an exact test without ties attains.
 */
export function attainable({smallestP}: Pick<PermutationScheme, 'smallestP'>): number {
  return Math.floor(level / smallestP + 1e-9) * smallestP
}

/** Cells of a table on one test: smallest p, attainable level, rejections, and whether they are 4 to 6 %. */
export function levelCells(
  results: readonly {readonly p: Quantity; readonly scheme: PermutationScheme}[]
): readonly string[] {
  const most = attainable(results[0]!.scheme)
  const rejections = tally(results.map(({p}) => isSmall(p)))
  return [
    results[0]!.scheme.smallestP.toPrecision(2),
    percent(most),
    percentWithError(rejections),
    levelVerdict(rejections, most)
  ]
}

/** 4 to 6 % where the steps of p allow it; else whether the test does what they allow. */
function levelVerdict(rejections: Tally, most: number): string {
  if (most >= 0.04) return verdict(rejections, 0.04, 0.06)
  const error = 2 * Math.sqrt((most * (1 - most)) / rejections.of)
  return Math.abs(rejections.hits / rejections.of - most) <= error ? 'as attainable' : '**no**'
}
