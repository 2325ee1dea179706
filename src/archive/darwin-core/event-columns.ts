import type {Site} from '../../model/study.ts'
import type {PublishedPlace} from '../privacy/published-place.ts'
import type {TermColumn} from './term-table.ts'

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

/** The columns of the event core. */
export function eventColumns(contact: string | undefined): readonly TermColumn<EventRow>[] {
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
      value: ({site, place}) => (place?.hidesLocality ? undefined : site?.locality)
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

function elevation({site}: EventRow): number | undefined {
  return site?.elevationM
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
function generalised(place: PublishedPlace | undefined): string | undefined {
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
        ? `the coordinates are withheld, because ${place.because}`
        : undefined
  const locality = place?.hidesLocality ? 'the locality is withheld' : undefined
  const said = [position, locality, other].filter((part) => part !== undefined)
  if (said.length === 0) return undefined
  return `${said.join('; ')}${contact === undefined ? '' : `; ask ${contact}`}`
}
