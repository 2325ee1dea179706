import type {Settings} from '../../model/settings.ts'
import type {StudySource} from '../../model/source.ts'
import type {Study} from '../../model/study.ts'
import type {Reading} from '../reading.ts'
import {isTrack, placedPictures} from './held-positions.ts'
import {hiddenPositions, type SecretPoint} from './hidden-positions.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/** What of a study is not for others: while there is any of it, its raw files do not leave the house unchanged. */
export interface PrivateMatters {
  readonly positions: boolean
  /** What the files say of positions beyond what may be shown. */
  readonly points: readonly SecretPoint[]
  readonly names: boolean
  /** Names that are not shown with a place; none where `names` is false. */
  readonly kinds: readonly string[]
  /** Files of pictures that say where they were taken, and files that are nothing but positions. */
  readonly pictures: readonly string[]
  readonly tracks: readonly string[]
  /** Addresses of people whom `contact` does not name: they were not given for publication. */
  readonly emails: readonly string[]
  /** The same in sentences, for people. */
  readonly said: readonly string[]
}

export async function privateMatters(
  source: StudySource,
  originals: readonly string[],
  study: Study,
  privacy: StudyPrivacy,
  reading: Reading
): Promise<PrivateMatters> {
  const {files, points} = await hiddenPositions(source, study, privacy, reading)
  const isRecorded =
    privacy.withheldNames.size > 0 &&
    study.catch.some(({taxon, count}) => count > 0 && privacy.isWithheld(taxon))
  const catchAside = (study.tables.catch?.rowsRead ?? 0) > study.catch.length
  const names = isRecorded || (privacy.withheldNames.size > 0 && catchAside)
  const emails = privateEmails(study.settings)
  const positions = files.length > 0
  const pictures = privacy.isAllExact ? [] : await placedPictures(source, originals)
  const tracks = privacy.isAllExact ? [] : originals.filter(isTrack)
  const where = files.map(({file, rows}) => `${counted(rows, 'row')} of ${file}`).join(', ')
  return {
    positions,
    points,
    names,
    kinds: names ? [...privacy.withheldNames] : [],
    pictures,
    tracks,
    emails,
    said: [
      ...(positions
        ? [
            `Positions are rounded or left out in ${where}, as study.yaml, sites.csv and the sensitivity of the taxa ask for.`,
            'Columns that pitfolio does not know are emptied, because they may hold positions.'
          ]
        : []),
      ...(pictures.length > 0
        ? [
            `Pictures go in without what a camera writes beside them: the place where they were taken stood in ${pictures.join(', ')}.`
          ]
        : []),
      ...(tracks.length > 0 ? [`Files of positions are left out: ${tracks.join(', ')}.`] : []),
      ...(names
        ? [
            `${counted(privacy.withheldNames.size, 'name')} of sensitive taxa (category 1 or 2, Chapman 2020) ${privacy.withheldNames.size === 1 ? 'stands' : 'stand'} with the season as a whole; with a place ${privacy.withheldNames.size === 1 ? 'it is' : 'they are'} replaced by a number. All counts stand, so that comparing them can tell at which site such a kind was caught: what is held back is where those sites lie, their position and the nearest named place.`
          ]
        : []),
      ...(emails.length > 0
        ? [`${counted(emails.length, 'address', 'addresses')} of people not named as contact left out.`]
        : [])
    ]
  }
}

export function hasPrivateMatters({positions, names, pictures, tracks, emails}: PrivateMatters): boolean {
  return positions || names || [pictures, tracks, emails].some(({length}) => length > 0)
}

function privateEmails({people = [], contact = ''}: Settings): readonly string[] {
  return people.flatMap(({name, email}) =>
    email === undefined || contact.includes(name) || contact.includes(email) ? [] : [email]
  )
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}
