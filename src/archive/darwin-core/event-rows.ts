import {isoMoment} from '../../model/day.ts'
import type {Exposure, Site} from '../../model/study.ts'
import type {Dataset} from '../dataset.ts'
import type {PublishedPlace} from '../privacy/published-place.ts'
import type {PoolEvent, SeasonEvents, SiteEvent, TrapEvent, VisitEvent} from './season-events.ts'
import type {TermColumn, TermTable} from './term-table.ts'
import type {Term} from './terms.ts'

/** One event of any level, ready to be written. */
export interface EventRow {
  readonly id: string
  readonly parent?: string
  readonly type: string
  readonly date: string | undefined
  /** Days that the sample took. */
  readonly days?: number
  readonly effort?: string
  readonly habitat?: string
  readonly location?: string
  readonly site?: Site
  readonly place?: PublishedPlace | undefined
  readonly remarks?: string | undefined
  /** What is not told at this event beside its position. */
  readonly withheld?: string
}

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
    columns: columns(dataset.contact),
    constants,
    rows: () => eventRows(events)
  }
}

function columns(contact: string | undefined): readonly TermColumn<EventRow>[] {
  return [
    {term: 'dwc:eventID', value: ({id}) => id},
    {term: 'dwc:parentEventID', value: ({parent}) => parent},
    {term: 'dwc:eventType', value: ({type}) => type},
    {term: 'dwc:eventDate', value: ({date}) => date},
    {term: 'dwc:sampleSizeValue', value: ({days}) => days},
    {term: 'dwc:sampleSizeUnit', value: ({days}) => (days === undefined ? undefined : 'day')},
    {term: 'dwc:samplingEffort', value: ({effort}) => effort},
    {term: 'dwc:habitat', value: ({habitat}) => habitat},
    {term: 'dwc:locationID', value: ({location}) => location},
    {term: 'dwc:country', value: ({site}) => site?.country},
    // Only a code that was written down: names of countries are not looked up.
    {
      term: 'dwc:countryCode',
      value: ({site}) => (/^[A-Z]{2}$/.test(site?.country ?? '') ? site?.country : undefined)
    },
    {term: 'dwc:stateProvince', value: ({site}) => site?.region},
    {
      term: 'dwc:locality',
      value: ({site, place}) => (place?.shown === 'withheld' ? undefined : site?.locality)
    },
    {term: 'dwc:minimumElevationInMeters', value: elevation},
    {term: 'dwc:maximumElevationInMeters', value: elevation},
    {term: 'dwc:decimalLatitude', value: ({place}) => place?.latitude},
    {term: 'dwc:decimalLongitude', value: ({place}) => place?.longitude},
    {
      term: 'dwc:geodeticDatum',
      value: ({site, place}) => (place?.latitude === undefined ? undefined : datumOf(site?.datum))
    },
    {term: 'dwc:coordinateUncertaintyInMeters', value: ({place}) => place?.uncertaintyM},
    {term: 'dwc:coordinatePrecision', value: ({place}) => place?.precision},
    {term: 'dwc:georeferenceRemarks', value: ({place}) => assumed(place)},
    {term: 'dwc:informationWithheld', value: ({place, withheld}) => withheldWords(place, withheld, contact)},
    {term: 'dwc:dataGeneralizations', value: ({place}) => generalised(place)},
    {term: 'dwc:eventRemarks', value: ({remarks}) => remarks}
  ]
}

function elevation({site, place}: EventRow): number | undefined {
  return place?.shown === 'withheld' ? undefined : site?.elevationM
}

/** EPSG:4326 for the datum that nearly everybody means; other words as they are. */
function datumOf(datum: string | undefined): string {
  if (datum === undefined) return 'unknown'
  return /^wgs[ -]?(19)?84$/i.test(datum.trim()) ? 'EPSG:4326' : datum
}

function assumed(place: PublishedPlace | undefined): string | undefined {
  return place?.uncertaintyAssumed
    ? 'no uncertainty is on record; 30 m, as of a receiver without stated accuracy, were taken before rounding'
    : undefined
}

/** What was done to a position, in the words of its own row. */
export function generalised(place: PublishedPlace | undefined): string | undefined {
  return place?.shown === 'rounded'
    ? `coordinates rounded to ${place.precision} degrees, because ${place.because}; the uncertainty was enlarged accordingly`
    : undefined
}

function withheldWords(
  place: PublishedPlace | undefined,
  other: string | undefined,
  contact: string | undefined
): string | undefined {
  const position =
    place?.shown === 'rounded'
      ? 'the coordinates are known more exactly'
      : place?.shown === 'withheld'
        ? `coordinates, locality and elevation are withheld, because ${place.because}`
        : undefined
  const said = [position, other].filter((part) => part !== undefined)
  if (said.length === 0) return undefined
  return `${said.join('; ')}${contact === undefined ? '' : `; ask ${contact}`}`
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
