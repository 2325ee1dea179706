import type {Part} from './parts.ts'
import type {RecordedName} from './recorded-names.ts'
import type {Scope} from './scopes.ts'
import type {CatchInUse} from './season-records.ts'
import {speciesDecisions} from './species.ts'

/** What of the catch belongs to a scope, and as which species. */
export interface ScopeCatch {
  readonly scope: Scope
  /** Names that count as no species, with their animals and the reason. */
  readonly leftOut: readonly {readonly taxon: string; readonly individuals: number; readonly reason: string}[]
  /** The species that an animal counts for; undefined outside the scope or the rates, and for names left out. */
  readonly speciesOf: (each: CatchInUse) => string | undefined
  /** Individuals of a part as counted (raised counts would not be whole), by species and by every name. */
  readonly countsIn: (part: Part) => SpeciesCounts
}

export interface SpeciesCounts {
  readonly species: ReadonlyMap<string, number>
  readonly allNames: ReadonlyMap<string, number>
}

/** @param study the whole study: what counts as a species is decided once for all of it */
export function scopeCatch(scope: Scope, study: Part): ScopeCatch {
  const inScope = ({name, lifeStage, inRates}: CatchInUse) => inRates && scope.holds(name, lifeStage)
  const totals = new Map<RecordedName, number>()
  for (const each of study.catches) {
    if (inScope(each)) totals.set(each.name, (totals.get(each.name) ?? 0) + each.count)
  }
  const decisions = speciesDecisions([...totals.keys()].sort((a, b) => a.index - b.index))
  const speciesOf = (each: CatchInUse): string | undefined => {
    if (!inScope(each)) return undefined
    const {species, leftOut} = decisions.get(each.name)!
    return leftOut === undefined ? species : undefined
  }
  return {
    scope,
    speciesOf,
    leftOut: [...decisions].flatMap(([name, {leftOut: reason}]) => {
      return reason === undefined ? [] : [{taxon: name.name, individuals: totals.get(name)!, reason}]
    }),
    countsIn: ({catches}) => {
      const species = new Map<string, number>()
      const allNames = new Map<string, number>()
      for (const each of catches) {
        if (!inScope(each)) continue
        const {species: name, leftOut} = decisions.get(each.name)!
        allNames.set(name, (allNames.get(name) ?? 0) + each.count)
        if (leftOut === undefined) species.set(name, (species.get(name) ?? 0) + each.count)
      }
      return {species, allNames}
    }
  }
}
