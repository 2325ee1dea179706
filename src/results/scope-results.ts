import type {DissimilaritiesResult, ScopeResult} from '../model/results.ts'
import {frequencyCounts} from '../statistics/frequency-counts.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {type Comparable, unitsIn} from './comparable.ts'
import {comparisonResult} from './comparison.ts'
import {compositionResult} from './composition.ts'
import {counted, words} from './counted.ts'
import {dissimilaritiesResult, type PlaceRow} from './dissimilarities.ts'
import {diversityResult} from './diversity.ts'
import {indicatorsResult} from './indicators.ts'
import {bodySizes, guilds} from './make-up.ts'
import type {Part, Parts} from './parts.ts'
import {planningResult} from './planning.ts'
import type {Runner} from './replicates.ts'
import {addToUnit, type CaughtByFraction, raisedCount, type UnitCatches} from './sampling-units.ts'
import {type ScopeCatch, scopeCatch} from './scope-catch.ts'
import type {Scope} from './scopes.ts'
import {speciesSeasons} from './species-season.ts'
import type {HabitatInUse} from './study-area.ts'
import {catchesInRounds, caughtByUnit, communitiesOf} from './unit-catches.ts'

/** Everything that is worked out for each scope on its own. */
export function scopeResults(
  analysis: Analysis,
  parts: Parts,
  comparable: Comparable,
  runner: Runner
): ScopeResult[] {
  return analysis.scopes.map((scope) => scopeResult(scope, analysis, parts, comparable, runner))
}

function scopeResult(
  scope: Scope,
  analysis: Analysis,
  parts: Parts,
  comparable: Comparable,
  runner: Runner
): ScopeResult {
  const catches = scopeCatch(scope, parts.study)
  // Tests and the pictures beside them rest on the same rounds; without a test all rounds are shown.
  const rounds = comparable.supported ? comparable : {rounds: analysis.rounds.rounds, roundsLeftOut: []}
  const inRounds = catchesInRounds(analysis, rounds)
  const communities = communitiesOf(
    unitsIn(analysis, rounds.roundsLeftOut.length === 0 ? undefined : new Set(rounds.rounds)),
    inRounds,
    analysis,
    catches.speciesOf
  )
  const caught = caughtByUnit(inRounds, analysis, ({name, lifeStage}) => scope.holds(name, lifeStage))
  const compared = {id: scope.id, label: scope.label, caught}
  const comparison = comparisonResult(compared, comparable, analysis)
  const planned = {
    ...compared,
    caughtInAll: caughtByUnit(parts.study.catches, analysis, (each) => {
      return each.inRates && scope.holds(each.name, each.lifeStage)
    }),
    sampleOf: (habitat: HabitatInUse) => {
      return frequencyCounts([...catches.countsIn(parts.ofHabitat(habitat)).species.values()])
    }
  }
  return {
    id: scope.id,
    label: scope.label,
    leftOut: [...catches.leftOut]
      .sort((a, b) => b.individuals - a.individuals || codeUnitOrder(a.taxon, b.taxon))
      .map(({taxon, individuals, reason}) => {
        return {
          taxon,
          reason,
          individuals: counted(`Individuals of ${taxon}`, individuals, words.individuals)
        }
      }),
    leftOutIndividuals: counted(
      `Individuals left out of diversity, ${scope.label}`,
      catches.leftOut.reduce((sum, {individuals}) => sum + individuals, 0),
      words.individuals
    ),
    ...diversityResult(catches, analysis, parts, runner),
    dissimilarities: dissimilarities(catches, analysis, parts),
    comparison,
    composition: compositionResult(communities, scope, comparable, analysis),
    indicators: indicatorsResult(communities, scope, comparable, analysis),
    season: speciesSeasons(catches, analysis, parts),
    guilds: guilds(scope, analysis, parts),
    bodySizes: bodySizes(scope, analysis, parts),
    planning: planningResult(planned, comparison, comparable, analysis, parts)
  }
}

function dissimilarities(
  {scope, speciesOf}: ScopeCatch,
  {area}: Analysis,
  parts: Parts
): {sites: DissimilaritiesResult; habitats: DissimilaritiesResult} {
  const rates = ({catches, units}: Part): ReadonlyMap<string, number> => {
    const net = [...units.values()].reduce((sum, unit) => sum + unit.net, 0)
    const species = new Map<string, UnitCatches>()
    for (const each of catches) {
      const name = speciesOf(each)
      if (name === undefined) continue
      const caught: UnitCatches = species.get(name) ?? new Map<number, CaughtByFraction>()
      species.set(name, caught)
      addToUnit(caught, each, 'site')
    }
    return new Map(
      [...species].map(([name, caught]) => {
        const raised = [...caught].sort(([a], [b]) => a - b).map(([, own]) => raisedCount(own))
        return [name, (100 * raised.reduce((sum, count) => sum + count, 0)) / net]
      })
    )
  }
  const names = [...rates(parts.study).keys()].sort()
  const row = (place: Omit<PlaceRow, 'rates'>, part: Part): PlaceRow => {
    const own = rates(part)
    return {...place, rates: names.map((name) => own.get(name) ?? 0)}
  }
  return {
    sites: dissimilaritiesResult(
      area.sites.map((site) => {
        const {id, name, habitat} = site
        return row({id, label: name, habitat: habitat.id, style: habitat.style}, parts.ofSite(site))
      }),
      'sites',
      scope.label,
      area.habitats
    ),
    habitats: dissimilaritiesResult(
      area.habitats.map((habitat) => {
        const {id, label, style} = habitat
        return row({id, label, habitat: id, style}, parts.ofHabitat(habitat))
      }),
      'habitats',
      scope.label
    )
  }
}
