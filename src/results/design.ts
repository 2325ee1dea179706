import type {DesignResult, SiteResult} from '../model/results.ts'
import type {Analysis} from './analysis.ts'
import type {Comparable} from './comparable.ts'
import {confoundedWithHabitat} from './confounding.ts'
import {counted, words} from './counted.ts'
import {siteDistances} from './distances.ts'
import {groupBy} from './group-by.ts'
import type {Parts} from './parts.ts'
import {sitesThatCount} from './sampling-units.ts'
import type {SiteInUse} from './study-area.ts'

/** What the records say of the design, and whether it supports a comparison of habitats. */
export function designResult(
  analysis: Analysis,
  parts: Parts,
  sites: readonly SiteResult[],
  {supported}: Comparable
): DesignResult {
  const {
    area,
    rounds: {rounds},
    exposures,
    unit,
    unitDecidedBy
  } = analysis
  const sampled = area.habitats.filter((habitat) => parts.ofHabitat(habitat).units.size > 0)
  const shared = new Set(
    rounds.filter((round) => {
      return (
        sampled.length > 0 &&
        sampled.every((habitat) => parts.ofHabitatInRound(habitat, round).units.size > 0)
      )
    })
  )
  const confounded = confoundedWithHabitat(analysis, shared)
  const single = area.habitats.filter((habitat) => sitesThatCount(parts.ofHabitat(habitat).exposures) === 1)
  return {
    unit,
    ...(unitDecidedBy !== undefined && {unitDecidedBy}),
    habitats: counted('Habitats', area.habitats.length, words.habitats),
    sites: counted('Sites', area.sites.length, words.sites),
    traps: counted('Traps', area.traps.length, words.traps),
    rounds: counted('Rounds', rounds.length, words.rounds),
    exposures: counted('Exposures on record', exposures.length, words.exposures),
    singleSiteHabitats: single.map(({label}) => label),
    ...blocksOf(area.sites),
    confounded,
    sharedRounds: counted('Rounds with trap-nights that count in every habitat', shared.size, words.rounds),
    unsharedRounds: rounds.filter((round) => !shared.has(round)).map(({id}) => id),
    supportsComparison: supported,
    ...siteDistances(area.sites, sites)
  }
}

/** Nothing where a site lacks its block; habitats in one of several blocks cannot be told from it. */
function blocksOf(sites: readonly SiteInUse[]): Pick<DesignResult, 'blocks' | 'oneBlockHabitats'> {
  const known = sites.flatMap(({habitat, record: {block}}) => (block === undefined ? [] : [{habitat, block}]))
  const blocks = new Set(known.map(({block}) => block)).size
  if (known.length < sites.length || blocks === 0) return {}
  const oneBlock = [...groupBy(known, ({habitat}) => habitat)].filter(([, own]) => {
    return blocks > 1 && own.length > 1 && own.every(({block}) => block === own[0]?.block)
  })
  return {
    blocks: counted('Blocks of sites', blocks, words.blocks),
    ...(oneBlock.length > 0 && {oneBlockHabitats: oneBlock.map(([{label}]) => label)})
  }
}
