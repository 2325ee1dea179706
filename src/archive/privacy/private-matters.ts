import type {Settings} from '../../model/settings.ts'
import type {StudySource} from '../../model/source.ts'
import type {Study} from '../../model/study.ts'
import type {Reading} from '../reading.ts'
import {hiddenPositions, type SecretPoint} from './hidden-positions.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/** What of a study is not for others: while there is any of it, its raw files do not leave the house unchanged. */
export interface PrivateMatters {
  readonly positions: boolean
  /** What the files say of positions beyond what may be shown. */
  readonly points: readonly SecretPoint[]
  readonly names: boolean
  /** Addresses of people whom `contact` does not name: they were not given for publication. */
  readonly emails: readonly string[]
  /** The same in sentences, for people. */
  readonly said: readonly string[]
}

export async function privateMatters(
  source: StudySource,
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
  const where = files.map(({file, rows}) => `${counted(rows, 'row')} of ${file}`).join(', ')
  return {
    positions,
    points,
    names,
    emails,
    said: [
      ...(positions
        ? [
            `Positions are rounded or left out in ${where}, as study.yaml, sites.csv and the sensitivity of the taxa ask for.`,
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

function privateEmails({people = [], contact = ''}: Settings): readonly string[] {
  return people.flatMap(({name, email}) =>
    email === undefined || contact.includes(name) || contact.includes(email) ? [] : [email]
  )
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}
