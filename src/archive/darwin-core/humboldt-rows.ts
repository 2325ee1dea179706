import type {Study} from '../../model/study.ts'
import type {StudyPrivacy} from '../privacy/study-privacy.ts'
import {rounded, stateWords} from './event-rows.ts'
import {type HumboldtRow, humboldtColumns} from './humboldt-columns.ts'
import type {PoolEvent, SeasonEvents, SiteEvent, VisitEvent} from './season-events.ts'
import {isReportedEmpty, isSoundPool, isSoundVisit, type Target} from './target.ts'
import type {TermTable} from './term-table.ts'
import type {Term} from './terms.ts'

/**
 * Humboldt Extension (https://eco.tdwg.org/): scope on the season and on everything inside it, effort and
 * completeness on each exposure. Effort is never summed upwards.
 */
export function humboldtTable(events: SeasonEvents, target: Target): TermTable<HumboldtRow> {
  const {settings} = events.study
  const constants: [Term, string][] = [
    // No definition of the values is published; the FullyReported terms apply to restricted and open searches only.
    ['eco:inventoryTypes', 'restrictedSearch'],
    ['eco:compilationTypes', 'samplingEvents'],
    ['eco:protocolNames', 'pitfallTrapping']
  ]
  const described = protocolWords(settings)
  if (described !== '') constants.push(['eco:protocolDescriptions', described])
  return {
    file: 'humboldt.csv',
    rowType: 'eco:Event',
    title: 'Scope, effort and completeness of every event (Humboldt Extension)',
    columns: humboldtColumns(target),
    constants,
    rows: () => humboldtRows(events, target)
  }
}

function* humboldtRows(events: SeasonEvents, target: Target): Iterable<HumboldtRow> {
  const {sites, withheld, privacy} = events
  const hidden = [...new Set(withheld.map(({taxon}) => privacy.names.of(taxon)))]
    .filter(target.belongs)
    .map(({name}) => name)
    .sort()
  const excluded = hidden.length > 0 ? {excluded: hidden.join(' | ')} : {}
  yield {
    event: events.id,
    siteCount: sites.length,
    nesting: nestingWords(sites),
    habitats: [...new Set(sites.map(({site}) => site.habitat.label))].join(' | '),
    fullyReported: target.allRecorded
  }
  for (const site of sites) {
    const habitats = site.site.habitat.label
    yield {event: site.id, habitats, ...excluded}
    for (const trap of site.traps) {
      if (!events.study.effortBySite) yield {event: trap.id, habitats, ...excluded}
      for (const visit of trap.visits) yield visitRow(visit, habitats, excluded, target, privacy)
    }
    for (const pool of site.pools) yield poolRow(pool, habitats, excluded, target, privacy)
  }
}

type Excluded = Pick<HumboldtRow, 'excluded'>

function visitRow(
  visit: VisitEvent,
  habitats: string,
  excluded: Excluded,
  target: Target,
  privacy: StudyPrivacy
): HumboldtRow {
  const {id, exposure, effort, records, isPooled, ofWholeSite} = visit
  const empty = isReportedEmpty(visit, target)
  const nights = effort.net > 0 ? effort.net : effort.unsorted > 0 ? effort.unsorted : undefined
  return {
    event: id,
    habitats,
    ...excluded,
    ...(effort.exposed !== undefined &&
      effort.exposed > 0 &&
      !ofWholeSite && {days: rounded(effort.exposed)}),
    isCollection: true,
    // What became of the traps of old data is not known, and neither is what they missed.
    fullyReported: ofWholeSite ? undefined : reported(isSoundVisit(visit), target),
    absence: empty,
    ...(empty && {absent: target.groups.join(' | ')}),
    nonTarget: hasNonTarget(visit, target, privacy),
    effort: isPooled || nights === undefined ? undefined : rounded(nights),
    vouchers: records.some(({voucher}) => voucher !== undefined),
    by: exposure.collectedBy,
    ...(isExtreme(exposure) && {extreme: stateWords(exposure)})
  }
}

function poolRow(
  pool: PoolEvent,
  habitats: string,
  excluded: Excluded,
  target: Target,
  privacy: StudyPrivacy
): HumboldtRow {
  const {id, visits, records} = pool
  const nights = visits.reduce((sum, {effort}) => sum + effort.net, 0)
  return {
    event: id,
    habitats,
    ...excluded,
    isCollection: true,
    fullyReported: reported(isSoundPool(pool), target),
    absence: false,
    nonTarget: records.some(({taxon}) => !target.belongs(privacy.names.of(taxon))),
    effort: nights > 0 ? rounded(nights) : undefined,
    vouchers: records.some(({voucher}) => voucher !== undefined),
    by: visits[0]?.exposure.collectedBy
  }
}

/** Failures and losses; that a trap was closed on purpose is none. */
function isExtreme({condition, failedOn, sample}: VisitEvent['exposure']): boolean {
  if (condition === 'closed') return false
  return (condition !== 'intact' && condition !== 'diluted') || failedOn !== undefined || sample === 'lost'
}

/** A failed trap reports its scope in part whatever study.yaml says; a sound one as fully as study.yaml says. */
function reported(isSound: boolean, {allRecorded}: Target): boolean | undefined {
  return isSound ? allRecorded : false
}

function hasNonTarget({exposure, records}: VisitEvent, target: Target, {names}: StudyPrivacy): boolean {
  const vertebrates = (exposure.vertebratesCount ?? 0) > 0 || exposure.vertebratesWhat !== undefined
  return vertebrates || records.some(({taxon}) => !target.belongs(names.of(taxon)))
}

function nestingWords(sites: readonly SiteEvent[]): string {
  const traps = sites.reduce((sum, site) => sum + site.traps.length, 0)
  return `${sites.length} sites with ${traps} traps in all; events nest as season, site, trap and exposure of the trap`
}

/** The trap and its fluid in the words of study.yaml. */
function protocolWords({trap_types: types, fluids}: Study['settings']): string {
  const trapWords = Object.values(types ?? {}).map(
    ({container = 'pitfall trap', rim_diameter_mm: rim, depth_mm: depth, cover}) =>
      [
        container,
        rim === undefined ? '' : `rim ${rim} mm wide`,
        depth === undefined ? '' : `${depth} mm deep`,
        typeof cover === 'string' ? `cover: ${cover}` : ''
      ]
        .filter((part) => part !== '')
        .join(', ')
  )
  const fluidWords = Object.values(fluids ?? {}).map(({substance = 'fluid', dilution}) =>
    dilution === undefined ? substance : `${substance} ${dilution}`
  )
  return [...trapWords, ...fluidWords].join('; ')
}
