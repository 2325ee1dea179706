import type {Study, Taxon} from '../../model/study.ts'
import {isWithheldFromPlaces, type RecordedNames, recordedNames} from '../../results/recorded-names.ts'
import {type PublishedPlace, publishedPlace} from './published-place.ts'

/** What others may see of a study: positions, and the names that are never shown with a place. */
export interface StudyPrivacy {
  readonly names: RecordedNames
  readonly placeOfSite: (siteId: string) => PublishedPlace | undefined
  readonly placeOfTrap: (trapId: string) => PublishedPlace | undefined
  /** Whether every position may be shown exactly, recorded or not. */
  readonly isAllExact: boolean
  /** Whether a name as written in the catch may not be shown with a place. */
  readonly isWithheld: (taxon: string) => boolean
  /** Names of taxa.csv that may not be shown with a place, and their synonyms. */
  readonly withheldNames: ReadonlySet<string>
}

export function studyPrivacy(study: Study): StudyPrivacy {
  const names = recordedNames(study.taxa, study.catch)
  const categories = strictestCategories(study, names)
  const places = new Map<string, PublishedPlace>()
  const trapPlaces = new Map<string, PublishedPlace>()
  const sites = new Map(study.sites.map((site) => [site.siteId, site]))
  for (const site of study.sites) {
    places.set(site.siteId, publishedPlace(site, site, study.settings, categories.get(site.siteId)))
  }
  for (const trap of study.traps) {
    const site = sites.get(trap.siteId)
    if (site !== undefined)
      trapPlaces.set(trap.trapId, publishedPlace(site, trap, study.settings, categories.get(site.siteId)))
  }
  const withheldNames = namesWithheld(study.taxa)
  return {
    names,
    placeOfSite: (siteId) => places.get(siteId),
    placeOfTrap: (trapId) => trapPlaces.get(trapId),
    isAllExact:
      study.settings.privacy?.coordinates === 'exact' &&
      [...places.values(), ...trapPlaces.values()].every(({mayBeExact}) => mayBeExact),
    isWithheld: (taxon) => withheldNames.has(taxon),
    withheldNames
  }
}

/** The strictest sensitivity among the animals recorded at each site. */
function strictestCategories(study: Study, names: RecordedNames): ReadonlyMap<string, number> {
  const strictest = new Map<string, number>()
  if (!names.names.some(({sensitive}) => sensitive !== undefined)) return strictest
  const siteOfTrap = new Map(study.traps.map(({trapId, siteId}) => [trapId, siteId]))
  for (const {taxon, count, trapId, siteId} of study.catch) {
    if (count === 0) continue
    const category = names.of(taxon).sensitive
    const site = trapId === undefined ? siteId : siteOfTrap.get(trapId)
    if (category === undefined || site === undefined) continue
    strictest.set(site, Math.min(category, strictest.get(site) ?? category))
  }
  return strictest
}

/** Names whose category, or that of a name they stand for, or of one that stands for them, forbids to show a place. */
function namesWithheld(taxa: readonly Taxon[]): ReadonlySet<string> {
  const group = new Map(taxa.map(({taxon}) => [taxon, new Set([taxon])]))
  for (const {taxon, acceptedName} of taxa) {
    if (acceptedName === undefined) continue
    const [mine, theirs] = [group.get(taxon)!, group.get(acceptedName) ?? new Set([acceptedName])]
    const joined = new Set([...mine, ...theirs])
    for (const name of joined) group.set(name, joined)
  }
  const withheld = new Set<string>()
  for (const {taxon, sensitive} of taxa) {
    if (!isWithheldFromPlaces({index: 0, name: taxon, taxon: undefined, sensitive})) continue
    for (const name of group.get(taxon) ?? [taxon]) withheld.add(name)
  }
  return withheld
}
