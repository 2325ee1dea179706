import {isoDay} from '../model/day.ts'
import {isDefined, type Measure} from '../model/quantity.ts'
import type {SiteResult} from '../model/results.ts'
import type {Site, Taxon} from '../model/study.ts'
import type {Analysis} from './analysis.ts'
import {catchResult} from './catch.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, words} from './counted.ts'
import {effortResult} from './effort.ts'
import {groupCatches, roundCount} from './habitats.ts'
import {lostBecause} from './lost-because.ts'
import type {Part, Parts} from './parts.ts'
import {pictureNames} from './picture-names.ts'
import {isWithheldFromPlaces, type RecordedName} from './recorded-names.ts'
import {scopeCatch} from './scope-catch.ts'
import {seasonWindow} from './season.ts'
import {sitePosition} from './site-position.ts'
import type {SiteInUse} from './study-area.ts'
import {trapLayout} from './trap-layout.ts'
import {vertebratesResult} from './vertebrates.ts'

export function siteResults(analysis: Analysis, parts: Parts): SiteResult[] {
  const {sites} = analysis.area
  const kinds = kindsOf(analysis, parts)
  const pictures = pictureNames(sites.map(({id}) => id))
  return sites.map((site) =>
    siteResult(site, analysis, parts.ofSite(site), pictures.get(site.id) ?? site.id, kinds)
  )
}

function siteResult(
  site: SiteInUse,
  analysis: Analysis,
  part: Part,
  picture: string,
  kinds: Kinds
): SiteResult {
  const {record, name, habitat} = site
  const names = namesOf(part)
  const open = names.filter(({recorded}) => !isWithheldFromPlaces(recorded))
  const position = sitePosition(record, analysis.study.settings, strictestCategory(names))
  const effort = effortResult(part, analysis.planned)
  const catchOf = (recorded: RecordedName, what: string, value: number) => {
    return counted(`${what}, ${recorded.name}, ${name}`, value, words.individuals)
  }
  return {
    id: site.id,
    name,
    habitat: habitat.id,
    habitatLabel: habitat.label,
    style: habitat.style,
    ...wordsOf(record, position.shown === 'withheld' || open.length < names.length),
    position,
    // Old data have one trap for each site, which stands for all of them.
    layout: trapLayout(analysis.study.effortBySite ? [] : part.traps, position, picture, name),
    structure: structureOf(record),
    traps: counted(`Traps, ${name}`, part.traps.length, words.traps),
    rounds: roundCount(part),
    ...seasonWindow(part.exposures.map((exposure) => exposure.record)),
    removal: removalOf(part),
    effort,
    lostBecause: isDefined(effort.planned) ? lostBecause(part, effort.planned.value) : [],
    kinds: kinds.ofAll(part),
    catch: catchResult(part, analysis),
    groups: groupCatches(part, analysis).map((group, index) => ({
      ...group,
      species: kinds.ofScope(part, index, group.label)
    })),
    taxa: open.map(({recorded, individuals, total}) => ({
      taxon: recorded.name,
      individuals: catchOf(recorded, 'Individuals in the rates', individuals),
      total: catchOf(recorded, 'Individuals recorded', total)
    })),
    withheldTaxa: counted(`Sensitive kinds not named, ${name}`, names.length - open.length, words.taxa),
    listed: open.flatMap(({recorded, total}) => {
      const status = statusOf(recorded.taxon)
      return status === undefined
        ? []
        : [{taxon: recorded.name, status, total: catchOf(recorded, 'Individuals recorded', total)}]
    }),
    worthKnowing: worthKnowing(open).map(({recorded, total, note}) => ({
      taxon: recorded.name,
      ...(recorded.taxon?.englishName !== undefined && {englishName: recorded.taxon.englishName}),
      note,
      total: catchOf(recorded, 'Individuals recorded', total)
    })),
    vertebrates: vertebratesResult(part)
  }
}

interface Kinds {
  readonly ofAll: (part: Part) => SiteResult['kinds']
  readonly ofScope: (part: Part, scope: number, label: string) => Measure
}

/** What counts as a kind at a site, by the rule that diversity goes by. */
function kindsOf(analysis: Analysis, parts: Parts): Kinds {
  const everything = scopeCatch({id: 'all', label: 'all names', holds: () => true}, parts.study)
  const scopes = analysis.scopes.map((scope) => scopeCatch(scope, parts.study))
  return {
    ofAll(part) {
      const inRates = part.catches.filter((each) => each.inRates)
      const others = inRates.filter((each) => everything.speciesOf(each) === undefined)
      return {
        species: counted(`Species, ${part.where}`, everything.countsIn(part).species.size, words.taxa),
        others: counted(
          `Individuals not told to a species, ${part.where}`,
          others.reduce((sum, {count}) => sum + count, 0),
          words.individuals
        )
      }
    },
    ofScope: (part, scope, label) =>
      counted(`Species, ${label}, ${part.where}`, scopes[scope]!.countsIn(part).species.size, words.taxa)
  }
}

interface NameAtSite {
  readonly recorded: RecordedName
  individuals: number
  total: number
}

const mostWorthKnowing = 5

/** The kinds of which taxa.csv has something to tell: listed ones first, then the most numerous. */
function worthKnowing(names: readonly NameAtSite[]): readonly (NameAtSite & {note: string})[] {
  const told = names.flatMap((name) => {
    const note = name.recorded.taxon?.note
    return note === undefined || name.total === 0 ? [] : [{...name, note}]
  })
  const isListed = ({recorded}: NameAtSite): boolean => statusOf(recorded.taxon) !== undefined
  return [...told.filter(isListed), ...told.filter((name) => !isListed(name))].slice(0, mostWorthKnowing)
}

/** Names caught here, most numerous first. */
function namesOf({catches}: Part): readonly NameAtSite[] {
  const names = new Map<RecordedName, NameAtSite>()
  for (const {name: recorded, count, inRates} of catches) {
    let here = names.get(recorded)
    if (here === undefined) {
      here = {recorded, individuals: 0, total: 0}
      names.set(recorded, here)
    }
    if (inRates) here.individuals += count
    here.total += count
  }
  return [...names.values()].sort(
    (a, b) => b.total - a.total || codeUnitOrder(a.recorded.name, b.recorded.name)
  )
}

function strictestCategory(names: readonly NameAtSite[]): number | undefined {
  const categories = names.flatMap(({recorded: {sensitive}}) => (sensitive === undefined ? [] : [sensitive]))
  return categories.length === 0 ? undefined : Math.min(...categories)
}

/** Red-list words that say that a kind is not threatened, or was not judged. */
const unlisted = /^(lc|least concern|ne|not evaluated|na|not applicable|not assessed|\*|-|none|no)$/i

function statusOf(taxon: Taxon | undefined): string | undefined {
  const redList =
    taxon?.redList !== undefined && !unlisted.test(taxon.redList.trim()) ? taxon.redList : undefined
  const legal =
    taxon?.legalStatus !== undefined && !unlisted.test(taxon.legalStatus.trim())
      ? taxon.legalStatus
      : undefined
  const parts = [legal, redList === undefined ? undefined : `red list: ${redList}`]
  return parts.filter((part) => part !== undefined).join('; ') || undefined
}

/**
 * What sites.csv says in words, but for the owner, who is nobody's business but that of the site report. The nearest
 * named place and the remarks go with the position where that is withheld, and where kinds were recorded that are not
 * shown with a place.
 */
function wordsOf({locality, region, country, management, soil, remarks}: Site, withheld: boolean) {
  return {
    ...(locality !== undefined && !withheld && {locality}),
    ...(region !== undefined && {region}),
    ...(country !== undefined && {country}),
    ...(management !== undefined && {management}),
    ...(soil !== undefined && {soil}),
    ...(remarks !== undefined && !withheld && {remarks})
  }
}

function structureOf(site: Site): Measure[] {
  const stated: readonly (readonly [
    label: string,
    unit: 'metres' | 'cm' | 'mm' | '%',
    value: number | undefined
  ])[] = [
    ['Elevation', 'metres', site.elevationM],
    ['Height of the vegetation', 'cm', site.vegetationHeightCm],
    ['Depth of the litter', 'mm', site.litterDepthMm],
    ['Bare ground', '%', site.bareGroundPercent],
    ['Canopy cover', '%', site.canopyPercent],
    ['Distance to the nearest edge of the habitat', 'metres', site.edgeDistanceM]
  ]
  return stated.flatMap(([label, unit, value]): Measure[] => {
    if (value === undefined) return []
    return unit === 'metres'
      ? [{label, kind: 'metres', value}]
      : [{label, kind: 'number', unit: [unit, unit], value}]
  })
}

function removalOf({traps, exposures, where}: Part): SiteResult['removal'] {
  const gone = exposures.filter(({record}) => record.condition === 'missing')
  const days = traps.flatMap(({record: {removed}}) => (removed === undefined ? [] : [removed]))
  return {
    recorded: counted(`Traps whose removal is recorded, ${where}`, days.length, words.traps),
    notRecorded: counted(
      `Traps whose removal is not recorded, ${where}`,
      traps.length - days.length,
      words.traps
    ),
    gone: counted(`Traps found missing, ${where}`, gone.length, words.traps),
    ...(days.length > 0 && {lastRemoved: isoDay(Math.max(...days))})
  }
}
