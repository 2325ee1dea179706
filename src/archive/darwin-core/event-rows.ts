import {isoMoment} from '../../model/day.ts'
import type {Exposure, Site} from '../../model/study.ts'
import type {Dataset} from '../dataset.ts'
import type {PublishedPlace} from '../privacy/published-place.ts'
import {type EventRow, eventColumns} from './event-columns.ts'
import type {PoolEvent, SeasonEvents, SiteEvent, TrapEvent, VisitEvent} from './season-events.ts'
import type {TermTable} from './term-table.ts'
import type {Term} from './terms.ts'

/** The event core: season, sites, traps, exposures. Nothing is inherited and nothing summed upwards: each row says its own. */
export function eventTable(events: SeasonEvents, dataset: Dataset): TermTable<EventRow> {
  const constants: [Term, string][] = [
    ['dwc:samplingProtocol', 'pitfall trap'],
    ['dwc:datasetName', dataset.title]
  ]
  if (dataset.licence !== undefined) constants.push(['dcterms:license', dataset.licence.url])
  return {
    file: 'event.csv',
    rowType: 'dwc:Event',
    title: 'Events: the season, its sites, their traps and every exposure of a trap',
    columns: eventColumns(dataset.contact),
    constants,
    rows: () => eventRows(events)
  }
}

function* eventRows({study, privacy, id, date, sites, withheld}: SeasonEvents): Iterable<EventRow> {
  const kept =
    withheld.length > 0
      ? {withheld: 'site, trap and day of sensitive kinds, whose records stand with the season as a whole'}
      : {}
  yield {id, type: 'project', date, remarks: study.settings.place?.description, ...kept}
  for (const site of sites) {
    yield siteRow(site, id, privacy.placeOfSite(site.site.id), study.settings.place?.datum)
    for (const trap of site.traps) {
      const row = trapRow(trap, placeOfTrap(trap, privacy), study.settings.place?.datum)
      // Old data that know no traps have one catch for each site.
      if (!study.effortBySite) yield row
      for (const visit of trap.visits) yield visitRow(visit, row)
    }
    for (const pool of site.pools)
      yield poolRow(pool, privacy.placeOfSite(site.site.id), study.settings.place?.datum)
  }
}

/** The trap's own position, else that of its site, whose uncertainty holds every trap. */
function placeOfTrap({trap, site}: TrapEvent, privacy: SeasonEvents['privacy']): PublishedPlace | undefined {
  const own = privacy.placeOfTrap(trap.id)
  return own === undefined || own.shown === 'not recorded' ? privacy.placeOfSite(site.site.id) : own
}

function siteRow(
  {id, site, date}: SiteEvent,
  parent: string,
  place: PublishedPlace | undefined,
  datum: string | undefined
): EventRow {
  return {
    id,
    parent,
    type: 'siteSeason',
    date,
    habitat: site.habitat.label,
    location: id,
    site: withDatum(site.record, datum),
    place,
    remarks: site.record.remarks
  }
}

function trapRow(
  {id, site, trap, date}: TrapEvent,
  own: PublishedPlace | undefined,
  datum: string | undefined
): EventRow & {readonly site: Site} {
  return {
    id,
    parent: site.id,
    type: 'trapDeployment',
    date,
    habitat: trap.site.habitat.label,
    location: id,
    site: withDatum(trap.site.record, datum),
    place: own,
    remarks: trap.record.remarks
  }
}

function visitRow(visit: VisitEvent, of: EventRow): EventRow {
  const {id, trap, exposure, effort, isPooled, ofWholeSite} = visit
  if (ofWholeSite) return siteCatchRow(visit, of)
  const counts = effort.net > 0 || effort.unsorted > 0
  const days =
    counts && !isPooled && effort.exposed !== undefined && effort.exposed > 0 ? effort.exposed : undefined
  return {
    ...of,
    id,
    parent: trap.id,
    type: 'trapVisit',
    date: intervalOf(exposure),
    ...(days !== undefined && {days: rounded(days), effort: effortWords(effort)}),
    remarks: [
      stateWords(exposure),
      isPooled ? 'the catch was pooled with that of other traps' : '',
      exposure.remarks ?? ''
    ]
      .filter((part) => part !== '')
      .join('; ')
  }
}

/** The catch of a whole site and season, of which no more than that and its effort is known. */
function siteCatchRow({id, trap, exposure, effort}: VisitEvent, of: EventRow): EventRow {
  const nights = exposure.statedNights
  return {
    ...of,
    id,
    parent: trap.site.id,
    type: 'siteCatch',
    date: intervalOf(exposure),
    location: trap.site.id,
    ...(nights !== undefined &&
      effort.net > 0 && {effort: `${rounded(nights)} trap-nights of the whole site`})
  }
}

function poolRow(
  {id, site, date, visits}: PoolEvent,
  place: PublishedPlace | undefined,
  datum: string | undefined
): EventRow {
  const nights = visits.reduce((sum, {effort}) => sum + effort.net, 0)
  return {
    id,
    parent: site.id,
    type: 'pooledCollection',
    date,
    ...(nights > 0 && {effort: `${visits.length} traps pooled, ${rounded(nights)} trap-nights together`}),
    habitat: site.site.habitat.label,
    location: site.id,
    site: withDatum(site.site.record, datum),
    place,
    remarks: `traps tipped together in the field: ${visits.map(({trap}) => trap.trap.id).join(', ')}`
  }
}

function withDatum(site: Site, datum: string | undefined): Site {
  return site.datum === undefined && datum !== undefined ? {...site, datum} : site
}

/** `2026-05-04/2026-05-18`, with times where both ends have one. */
function intervalOf({opened, collected}: Exposure): string {
  if (opened === undefined) return isoMoment(collected)
  const timed = opened.minutes !== undefined && collected.minutes !== undefined
  return timed
    ? `${isoMoment(opened)}/${isoMoment(collected)}`
    : `${isoMoment({day: opened.day})}/${isoMoment({day: collected.day})}`
}

function effortWords({exposed = 0, net, unsorted}: VisitEvent['effort']): string {
  const nights = net > 0 ? net : unsorted
  const part = nights === exposed ? '' : ` of ${rounded(exposed)} nights open`
  return `1 trap, ${rounded(nights)} trap-nights${part}${net > 0 ? '' : ', sample not sorted yet'}`
}

/** Everything about the state of a trap that a reader of the event must know. */
export function stateWords({condition, failedOn, sample}: Exposure): string {
  const failed = failedOn === undefined ? '' : `, failed on ${isoMoment(failedOn)}`
  const state = condition === 'intact' ? '' : `trap found ${condition}${failed}`
  const became = sample === 'lost' || sample === 'unsorted' ? `sample ${sample}` : ''
  return [state, became].filter((part) => part !== '').join(', ')
}

/** Nights with at most four decimals: clock times give fractions that mean nothing beyond minutes. */
export function rounded(nights: number): number {
  return Number(nights.toFixed(4))
}
