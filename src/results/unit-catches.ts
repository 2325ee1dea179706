import type {Analysis} from './analysis.ts'
import type {Comparable, UnitInUse} from './comparable.ts'
import {addToUnit, raisedCount, type UnitCatches} from './sampling-units.ts'
import type {CatchInUse} from './season-records.ts'

/** Catches in the rates of a set of rounds: the few sums where these are all rounds, else the rows behind them. */
export function catchesInRounds(
  {catches, summed}: Analysis,
  {rounds, roundsLeftOut}: Pick<Comparable, 'rounds' | 'roundsLeftOut'>
): readonly CatchInUse[] {
  if (roundsLeftOut.length === 0) return summed.filter(({inRates}) => inRates)
  const chosen = new Set(rounds)
  return catches.filter(({inRates, round}) => inRates && round !== undefined && chosen.has(round))
}

/** Catch of each sampling unit, of those animals that `holds` lets in. */
export function caughtByUnit(
  catches: readonly CatchInUse[],
  {unit}: Pick<Analysis, 'unit'>,
  holds: (each: CatchInUse) => boolean
): UnitCatches {
  const caught: UnitCatches = new Map()
  for (const each of catches) if (holds(each)) addToUnit(caught, each, unit)
  return caught
}

/** Species by sampling units: individuals per 100 trap-nights, and individuals as counted. */
export interface Community {
  readonly unit: UnitInUse
  readonly individuals: number
  readonly counts: readonly number[]
  readonly rates: readonly number[]
}

export interface Communities {
  /** Names of the columns, in code-unit order. */
  readonly species: readonly string[]
  readonly communities: readonly Community[]
}

/** The communities of sampling units, one column a species caught in any of them. */
export function communitiesOf(
  units: readonly UnitInUse[],
  catches: readonly CatchInUse[],
  {unit}: Pick<Analysis, 'unit'>,
  speciesOf: (each: CatchInUse) => string | undefined
): Communities {
  const wanted = new Set(units.map(({index}) => index))
  const bySpecies = new Map<string, UnitCatches>()
  for (const each of catches) {
    if (!each.inRates || !wanted.has(unit === 'trap' ? (each.trap?.index ?? -1) : each.site.index)) continue
    const species = speciesOf(each)
    if (species === undefined) continue
    let caught = bySpecies.get(species)
    if (caught === undefined) {
      caught = new Map()
      bySpecies.set(species, caught)
    }
    addToUnit(caught, each, unit)
  }
  const species = [...bySpecies.keys()].sort()
  const communities = units.map((each): Community => {
    const caught = species.map((name) => bySpecies.get(name)!.get(each.index))
    const counts = caught.map((own) => [...(own?.values() ?? [])].reduce((sum, count) => sum + count, 0))
    return {
      unit: each,
      counts,
      individuals: counts.reduce((sum, count) => sum + count, 0),
      rates: caught.map((own) => (100 * raisedCount(own)) / each.effort.net)
    }
  })
  return {species, communities}
}
