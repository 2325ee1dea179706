import type {Quantity} from '../model/quantity.ts'
import {holm} from './holm.ts'
import {type IndicatorValue, indicatorValue, largestIndicatorValue} from './indicator-value.ts'
import {type PermutationOptions, type PermutationScheme, permutations} from './permutations.ts'

interface IndicatorSpecies extends IndicatorValue {
  /** Index of the species in the list given. */
  readonly species: number
  readonly p: Quantity
  /** Holm-adjusted over the species tested. */
  readonly adjustedP: Quantity
}

export interface IndicatorValueTest {
  /** Species caught, in the order given. */
  readonly species: readonly IndicatorSpecies[]
  /** How many of them there are. */
  readonly tested: number
  /** Smallest p times species tested: what Holm's adjustment leaves of the best result possible. */
  readonly adjustedFloor: number
  /** Whether p is left out because that floor exceeds 0.05. */
  readonly withheld: boolean
  readonly scheme: PermutationScheme
}

/** Above this no adjusted p could be called small, whatever the data. */
const uselessFloor = 0.05

/**
 * Indicator values of several species with their p by permuting the groups over the samples (within blocks).
 * `catches[s][i]` is the catch of species s, as a rate where effort differs, in sample i.
 *
 * Formula: statistic: the largest indicator value over the groups (indicatorValue); p by counting
 * arrangements with at least the observed value, the same arrangements for all species; Holm over the species
 * caught.
 *
 * Source: Dufrene & Legendre 1997, Ecol. Monogr. 67:345-366; Holm 1979, Scand. J. Stat. 6:65-70; Phipson &
 * Smyth 2010, Stat. Appl. Genet. Mol. Biol. 9:39.
 *
 * Edge cases: species never caught are not tested. Where the smallest p times the species tested exceeds
 * 0.05, or with fewer than two groups, p is not defined and the values stand alone.
 *
 * @example indicatorValueTest([[1, 1, 1, 0, 0, 0]], ['a', 'a', 'a', 'b', 'b', 'b'], {limit: 99}).adjustedFloor // => 0.1
 * @example indicatorValueTest([[1, 1, 1, 0, 0, 0]], ['a', 'a', 'a', 'b', 'b', 'b'], {limit: 99}).withheld // => true
 * @example indicatorValueTest([[1, 1, 1, 1, 0, 0, 0, 0]], ['a', 'a', 'a', 'a', 'b', 'b', 'b', 'b'], {limit: 99}).species[0].p // => {value: 1 / 35}
 */
export function indicatorValueTest(
  catches: readonly (readonly number[])[],
  groups: readonly (string | number)[],
  {blocks, limit, random}: PermutationOptions
): IndicatorValueTest {
  const plan = permutations(groups, {...(blocks && {blocks}), limit, random})
  const {distinct, exhaustive, tried, smallestP} = plan
  const caught = catches.flatMap((values, species) => {
    const observed = indicatorValue(values, groups)
    return observed ? [{species, values, ...observed}] : []
  })
  const adjustedFloor = smallestP * caught.length
  const withheld = adjustedFloor > uselessFloor + 1e-12
  const reason =
    plan.groups.length < 2
      ? 'there are fewer than two groups'
      : withheld
        ? 'the smallest p that this design allows, times the species tested, exceeds 0.05'
        : undefined
  const reached = caught.map(() => 0)
  if (reason === undefined) {
    for (const arrangement of plan.arrangements()) {
      for (const [index, {values, value}] of caught.entries()) {
        const permuted = largestIndicatorValue(values, arrangement, plan.groups.length)
        if (permuted >= value - 1e-9) reached[index]! += 1
      }
    }
  }
  const pValues = reached.map((count) => (exhaustive ? count / tried : (1 + count) / (1 + tried)))
  const adjusted = holm(pValues)
  return {
    species: caught.map(({values, ...rest}, index) => ({
      ...rest,
      p: reason === undefined ? {value: pValues[index]!} : {notDefined: reason},
      adjustedP: reason === undefined ? {value: adjusted[index]!} : {notDefined: reason}
    })),
    tested: caught.length,
    adjustedFloor,
    withheld,
    scheme: {distinct, exhaustive, tried, smallestP}
  }
}
