import type {Settings} from '../../model/settings.ts'
import type {Study} from '../../model/study.ts'
import type {PublishedPlace} from './published-place.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/** What of a study is not for others: while there is any of it, its raw files do not leave the house unchanged. */
export interface PrivateMatters {
  readonly positions: boolean
  readonly names: boolean
  /** Addresses of people whom `contact` does not name: they were not given for publication. */
  readonly emails: readonly string[]
  /** The same in sentences, for people. */
  readonly said: readonly string[]
}

export function privateMatters(study: Study, privacy: StudyPrivacy): PrivateMatters {
  const sites = study.sites.filter((site) => isFiner(site, privacy.placeOfSite(site.siteId)))
  const traps = study.traps.filter((trap) => isFiner(trap, privacy.placeOfTrap(trap.trapId)))
  // A row that was set aside is still in the file, with its position.
  const aside = hasPositionsSetAside(study)
  const isRecorded =
    privacy.withheldNames.size > 0 &&
    study.catch.some(({taxon, count}) => count > 0 && privacy.isWithheld(taxon))
  const catchAside = (study.tables.catch?.rowsRead ?? 0) > study.catch.length
  const names = isRecorded || (privacy.withheldNames.size > 0 && catchAside)
  const emails = privateEmails(study.settings)
  const positions = sites.length + traps.length > 0 || aside
  return {
    positions,
    names,
    emails,
    said: [
      ...(positions
        ? [
            `Positions of ${counted(sites.length, 'site')} and ${counted(traps.length, 'trap')} are rounded or left out, as study.yaml, sites.csv and the sensitivity of the taxa ask for.`,
            'Columns that pitfolio does not know are emptied, because they may hold positions.'
          ]
        : []),
      ...(names
        ? [
            `${counted(privacy.withheldNames.size, 'name')} of sensitive taxa (category 1 or 2, Chapman 2020) ${privacy.withheldNames.size === 1 ? 'is' : 'are'} replaced by a number, so that no place is given away; all counts stand.`
          ]
        : []),
      ...(emails.length > 0
        ? [`${counted(emails.length, 'address', 'addresses')} of people not named as contact left out.`]
        : [])
    ]
  }
}

export function hasPrivateMatters({positions, names, emails}: PrivateMatters): boolean {
  return positions || names || emails.length > 0
}

/** Whether a point as written says more than may be shown. */
export function isFiner(
  {latitude, longitude}: {readonly latitude?: number; readonly longitude?: number},
  place: PublishedPlace | undefined
): boolean {
  if (latitude === undefined && longitude === undefined) return false
  if (place === undefined || place.shown === 'exact' || place.shown === 'not recorded') return false
  if (place.shown === 'withheld') return true
  return Number(place.latitude) !== latitude || Number(place.longitude) !== longitude
}

function hasPositionsSetAside({tables, sites, traps, settings}: Study): boolean {
  if (settings.privacy?.coordinates === 'exact') return false
  const isAside = (name: 'sites' | 'traps', used: number): boolean => {
    const table = tables[name]
    return table?.columns.has('latitude') === true && table.rowsRead > used
  }
  return isAside('sites', sites.length) || isAside('traps', traps.length)
}

function privateEmails({people = [], contact = ''}: Settings): readonly string[] {
  return people.flatMap(({name, email}) =>
    email === undefined || contact.includes(name) || contact.includes(email) ? [] : [email]
  )
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}
