import type {Results} from '../model/results.ts'
import type {Settings} from '../model/settings.ts'
import {type Licence, licenceOf} from './licence.ts'
import {type PersonName, personName} from './person-name.ts'

export interface Contributor {
  /** As it should be cited. */
  readonly name: string
  readonly parts: PersonName
  /** https://orcid.org/0000-0000-0000-0000 */
  readonly orcid?: string
  readonly role?: string
  /** Only where `contact` names the person: others were not given for publication. */
  readonly email?: string
}

/** A study as every metadata standard asks for it: the one place from which all of them are written. */
export interface Dataset {
  /** Short name, safe in file names and identifiers. */
  readonly id: string
  readonly title: string
  readonly description: string
  /** `en-GB` or `en-US`: the language of the documents. */
  readonly language: string
  readonly authors: readonly Contributor[]
  readonly others: readonly Contributor[]
  readonly contact?: string
  readonly funding?: string
  readonly licence?: Licence
  /** What study.yaml says where that is no SPDX identifier. */
  readonly licenceWords?: string
  /** ISO day. */
  readonly issued?: string
  readonly begins?: string
  readonly ends?: string
  /** Country and region, and the description of study.yaml. */
  readonly place?: string
  /** Degrees, of the positions as others may see them; absent where none is shown. */
  readonly box?: {
    readonly west: number
    readonly east: number
    readonly south: number
    readonly north: number
  }
  readonly targetGroups: readonly string[]
  readonly keywords: readonly string[]
  readonly toolVersion: string
  /** Stands for this very content: made from the checksums of the files of the study. */
  readonly fingerprint: string
}

/** @param fingerprint hexadecimal digits that change with the content of the study. */
export function datasetOf(results: Results, toolVersion: string, fingerprint: string): Dataset {
  const settings = results.stated as Settings
  const {title, season, place, target, contact, funding, licence: stated, report} = settings
  const {authors, others} = contributorsOf(settings)
  const licence = licenceOf(stated)
  const begins = results.protocol.firstOpened ?? season?.start
  const ends = results.protocol.lastCollected ?? season?.end
  const where = [place?.region, place?.country].filter((part) => part !== undefined).join(', ')
  const words = [where, place?.description].filter((part) => part !== undefined && part !== '').join('. ')
  const box = boxOf(results)
  const groups = target?.groups ?? []
  return {
    id: shortName(settings, results.season),
    title: title ?? 'A pitfall-trap study',
    description: descriptionOf(results, begins, ends),
    language: report?.language ?? 'en-GB',
    authors,
    others,
    ...(contact !== undefined && {contact}),
    ...(funding !== undefined && {funding}),
    ...(licence !== undefined && {licence}),
    ...(licence === undefined && stated !== undefined && {licenceWords: stated}),
    ...(results.issued !== undefined && {issued: results.issued}),
    ...(begins !== undefined && {begins}),
    ...(ends !== undefined && {ends}),
    ...(words !== '' && {place: words}),
    ...(box !== undefined && {box}),
    targetGroups: groups,
    keywords: ['pitfall trap', 'activity-density', ...groups],
    toolVersion,
    fingerprint
  }
}

/** `quill-valley-2025`: study_id, else the title, with the year unless it is in the name already. */
function shortName({study_id: id, title}: Settings, season: string): string {
  const name = slug(id ?? title ?? 'pitfall-study')
  const year = slug(season)
  if (!/^\d/.test(season) || name.includes(season.slice(0, 4))) return name
  return `${name}-${year}`
}

function slug(text: string): string {
  const plain = text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60)
    .replace(/-+$/, '')
  return plain === '' ? 'pitfall-study' : plain
}

function contributorsOf({people = []}: Settings): {authors: Contributor[]; others: Contributor[]} {
  const all = people.map(({name, orcid, role, email}): Contributor => {
    const bare = orcid?.replace(/^https?:\/\/orcid\.org\//, '')
    return {
      name,
      parts: personName(name),
      ...(bare !== undefined && /^(\d{4}-){3}\d{3}[\dX]$/.test(bare) && {orcid: `https://orcid.org/${bare}`}),
      ...(role !== undefined && {role}),
      ...(email !== undefined && {email})
    }
  })
  // The first one is the author, and so is everybody whose role says so.
  const isAuthor = ({role}: Contributor, index: number): boolean =>
    index === 0 || /author|writ/i.test(role ?? '')
  return {authors: all.filter(isAuthor), others: all.filter((person, index) => !isAuthor(person, index))}
}

/** Counts, not judgements: what was there, in one sentence. */
function descriptionOf({design, effort, taxa}: Results, begins?: string, ends?: string): string {
  const count = (measure: Results['design']['sites'], one: string, many: string): string =>
    'value' in measure
      ? `${measure.value} ${measure.value === 1 ? one : many}`
      : `an unknown number of ${many}`
  const nights = 'value' in effort.net ? `${Number(effort.net.value.toFixed(1))} trap-nights` : undefined
  const dates = begins !== undefined && ends !== undefined ? ` from ${begins} to ${ends}` : ''
  const kinds = `${taxa.length} ${taxa.length === 1 ? 'name' : 'names'} recorded`
  const what = [
    count(design.sites, 'site', 'sites'),
    count(design.habitats, 'habitat', 'habitats'),
    count(design.traps, 'trap', 'traps')
  ].join(', ')
  return `Pitfall-trap study: ${what}${dates}${nights === undefined ? '' : `, ${nights}`}; ${kinds}.`
}

function boxOf({sites}: Results): Dataset['box'] {
  const points = sites.flatMap(({position: {latitude, longitude}}) =>
    latitude === undefined || longitude === undefined ? [] : [[Number(latitude), Number(longitude)] as const]
  )
  if (points.length === 0) return undefined
  const latitudes = points.map(([latitude]) => latitude)
  const longitudes = points.map(([, longitude]) => longitude)
  return {
    west: Math.min(...longitudes),
    east: Math.max(...longitudes),
    south: Math.min(...latitudes),
    north: Math.max(...latitudes)
  }
}
