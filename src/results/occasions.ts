import type {Analysis} from './analysis.ts'
import type {RoundInUse} from './season-rounds.ts'
import type {SiteInUse, TrapInUse} from './study-area.ts'

/** Which species were found in which sampling units: one row a unit, one column a species. */
export interface Occurrences {
  readonly units: number
  /** Units that hold each species, for those found at all. */
  readonly unitsBySpecies: readonly number[]
  readonly presence: readonly (readonly boolean[])[]
}

/** Sampling units for incidence: a site (or trap) in a round, where some exposure earned effort. */
export interface Occasions {
  /** Occurrences at these sites. */
  readonly at: (sites: readonly SiteInUse[]) => Occurrences
}

/** Whether and as which species an animal counts; undefined where it does not. */
export type SpeciesOf = (catches: Analysis['catches'][number]) => string | undefined

/** @param speciesOf what counts as a species in a scope */
export function occasionsOf({exposures, catches, rounds, unit}: Analysis, speciesOf: SpeciesOf): Occasions {
  const sites = new Map<SiteInUse, Map<number, Set<string>>>()
  const unitOf = (site: SiteInUse, trap: TrapInUse | undefined, round: RoundInUse): Set<string> => {
    let own = sites.get(site)
    if (own === undefined) {
      own = new Map()
      sites.set(site, own)
    }
    const place = unit === 'trap' && trap !== undefined ? trap.index : 0
    const key = place * rounds.rounds.length + round.index
    let species = own.get(key)
    if (species === undefined) {
      species = new Set()
      own.set(key, species)
    }
    return species
  }
  for (const {trap, round, effort} of exposures) if (effort.net > 0) unitOf(trap.site, trap, round)
  for (const each of catches) {
    if (!each.inRates || each.round === undefined) continue
    const species = speciesOf(each)
    if (species !== undefined) unitOf(each.site, each.trap, each.round).add(species)
  }
  return {at: (wanted) => occurrences(wanted.flatMap((site) => [...(sites.get(site)?.values() ?? [])]))}
}

function occurrences(units: readonly ReadonlySet<string>[]): Occurrences {
  const counts = new Map<string, number>()
  for (const unit of units) for (const species of unit) counts.set(species, (counts.get(species) ?? 0) + 1)
  const found = [...counts.keys()]
  return {
    units: units.length,
    unitsBySpecies: [...counts.values()],
    presence: units.map((unit) => found.map((species) => unit.has(species)))
  }
}
