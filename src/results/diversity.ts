import {isDefined, type Measure} from '../model/quantity.ts'
import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import {commonCoverage} from '../statistics/common-coverage.ts'
import {frequencyCounts} from '../statistics/frequency-counts.ts'
import type {Analysis} from './analysis.ts'
import {type Assemblage, describeAssemblage} from './assemblage.ts'
import {equalCoverageResult} from './equal-coverage.ts'
import {type Occasions, occasionsOf} from './occasions.ts'
import {partitionResults} from './partitions.ts'
import type {Parts} from './parts.ts'
import type {Runner} from './replicates.ts'
import type {ScopeCatch} from './scope-catch.ts'

type Diversity = Pick<
  ScopeResult,
  'study' | 'habitats' | 'sites' | 'rankable' | 'equalCoverage' | 'partitions'
>

/** Diversity of the whole study, of each habitat and of each site within one scope, alone and at equal coverage. */
export function diversityResult(
  {scope, speciesOf, countsIn}: ScopeCatch,
  analysis: Analysis,
  parts: Parts,
  runner: Runner
): Diversity {
  const {area} = analysis
  const occasions: Occasions = occasionsOf(analysis, speciesOf)
  const assemblage = (whose: Omit<Assemblage, 'scope' | 'species' | 'allNames'>): Assemblage => {
    return {...whose, scope, ...countsIn(whose.part)}
  }
  const habitats = area.habitats.map((habitat) => {
    const {id, label, style} = habitat
    const occurrences = occasions.at(area.sites.filter((site) => site.habitat === habitat))
    return assemblage({of: 'habitat', id, label, style, part: parts.ofHabitat(habitat), occurrences})
  })
  const sites = area.sites.map((site) => {
    const {id, name, habitat} = site
    const occurrences = occasions.at([site])
    return assemblage({
      of: 'site',
      id,
      label: name,
      style: habitat.style,
      part: parts.ofSite(site),
      occurrences
    })
  })
  const whole = assemblage({
    of: 'study',
    id: 'study',
    label: 'whole study',
    style: 0,
    part: parts.study,
    occurrences: occasions.at(area.sites)
  })
  const common = commonCoverage(
    habitats.map(({id, species}) => ({name: id, sample: frequencyCounts([...species.values()])}))
  )
  const target = isDefined(common.coverage) ? common.coverage.value : undefined
  const compared = new Set(common.compared)
  const described = {
    study: describeAssemblage(whole, undefined, analysis, runner),
    habitats: habitats.map((each) => {
      return describeAssemblage(each, compared.has(each.id) ? target : undefined, analysis, runner)
    }),
    sites: sites.map((each) => describeAssemblage(each, target, analysis, runner))
  }
  const results = described.habitats.map(({result}) => result)
  return {
    study: described.study.result,
    habitats: results,
    sites: described.sites.map(({result}) => result),
    rankable: rankable(results),
    equalCoverage: equalCoverageResult(
      common,
      area.habitats.map((habitat, index) => [habitat, described.habitats[index]!]),
      area.sites.map((site, index) => [site, described.sites[index]!]),
      scope.label
    ),
    partitions: partitionResults(
      area.habitats.map((place, index) => ({place, species: habitats[index]!.species})),
      area.sites.map((place, index) => ({place, species: sites[index]!.species})),
      scope.label
    )
  }
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
