import {isDefined, type Measure} from '../model/quantity.ts'
import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import type {Analysis} from './analysis.ts'
import {type Assemblage, assemblageResult, type SpeciesCounts} from './assemblage.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, words} from './counted.ts'
import type {Part, Parts} from './parts.ts'
import type {RecordedName} from './recorded-names.ts'
import type {Scope} from './scopes.ts'
import {type SpeciesDecision, speciesDecisions} from './species.ts'

/** Diversity of the whole study, of each habitat and of each site, for each scope. */
export function scopeResults(analysis: Analysis, parts: Parts): ScopeResult[] {
  return analysis.scopes.map((scope) => scopeResult(scope, analysis, parts))
}

type Decisions = ReadonlyMap<RecordedName, SpeciesDecision>

function scopeResult(scope: Scope, {area}: Analysis, parts: Parts): ScopeResult {
  const totals = nameCounts(parts.study, scope)
  const decisions = speciesDecisions([...totals.keys()].sort((a, b) => a.index - b.index))
  const leftOut = [...decisions].flatMap(([name, {leftOut: reason}]) => {
    return reason === undefined ? [] : [{taxon: name.name, count: totals.get(name)!, reason}]
  })
  const assemblage = (whose: Omit<Assemblage, 'scope'>) => {
    return assemblageResult(
      {...whose, scope: scope.label},
      speciesCounts(nameCounts(whose.part, scope), decisions)
    )
  }
  const habitats = area.habitats.map((habitat) => {
    const {id, label, style} = habitat
    return assemblage({of: 'habitat', id, label, style, part: parts.ofHabitat(habitat)})
  })
  return {
    id: scope.id,
    label: scope.label,
    leftOut: leftOut
      .sort((a, b) => b.count - a.count || codeUnitOrder(a.taxon, b.taxon))
      .map(({taxon, count, reason}) => {
        return {taxon, reason, individuals: counted(`Individuals of ${taxon}`, count, words.individuals)}
      }),
    leftOutIndividuals: counted(
      `Individuals left out of diversity, ${scope.label}`,
      leftOut.reduce((sum, {count}) => sum + count, 0),
      words.individuals
    ),
    study: assemblage({of: 'study', id: 'study', label: 'whole study', style: 0, part: parts.study}),
    habitats,
    sites: area.sites.map((site) => {
      const {
        id,
        name,
        habitat: {style}
      } = site
      return assemblage({of: 'site', id, label: name, style, part: parts.ofSite(site)})
    }),
    rankable: rankable(habitats)
  }
}

/** Individuals in the rates by name, as counted: raised counts would not be whole. */
function nameCounts({catches}: Part, scope: Scope): ReadonlyMap<RecordedName, number> {
  const counts = new Map<RecordedName, number>()
  for (const {name, lifeStage, count, inRates} of catches) {
    if (!inRates || !scope.holds(name, lifeStage)) continue
    counts.set(name, (counts.get(name) ?? 0) + count)
  }
  return counts
}

function speciesCounts(counts: ReadonlyMap<RecordedName, number>, decisions: Decisions): SpeciesCounts {
  const species = new Map<string, number>()
  const allNames = new Map<string, number>()
  for (const [name, count] of counts) {
    const decision = decisions.get(name)!
    allNames.set(decision.species, (allNames.get(decision.species) ?? 0) + count)
    if (decision.leftOut === undefined)
      species.set(decision.species, (species.get(decision.species) ?? 0) + count)
  }
  return {species, allNames}
}

/** Observed species numbers may be ranked only where every habitat had the same effort and the same coverage. */
function rankable(habitats: readonly AssemblageResult[]): boolean {
  const [first, ...others] = habitats
  if (first === undefined || others.length === 0) return false
  return others.every((other) => {
    return equal(first.net, other.net, 1e-9) && equal(first.coverage, other.coverage, 0.0005)
  })
}

function equal(first: Measure, second: Measure, tolerance: number): boolean {
  return isDefined(first) && isDefined(second) && Math.abs(first.value - second.value) <= tolerance
}
