import type {ArchiveEntry} from '../../model/archive-entry.ts'
import {isPicture, tellsPlace} from './held-positions.ts'
import type {SecretPoint} from './hidden-positions.ts'
import type {PrivateMatters} from './private-matters.ts'
import {secretCoordinate, tellingNumbers} from './secret-coordinates.ts'
import {chunksOf, textPieces} from './text-pieces.ts'
import {waysToWrite, wordSearch} from './word-search.ts'

/** A file that gives away what is held back everywhere else. */
export interface Leak {
  readonly file: string
  /** `the position of OAK2`, `the address of a person`. */
  readonly what: string
}

/** Packed formats are made of the same text as the pages beside them. */
const packed = /\.(docx|xlsx|pdf|zip)$/i

/** Files whose words belong to a site, a trap or a visit: a sensitive kind that is named there is tied to that place. */
const tiedToPlaces = /^(raw\/text\/site-|report\/site-|report\/tables\/site|dwca\/(event|measurement)\.csv$)/

/**
 * Search files for positions, addresses and names that an archive must not hold. Positions are found in decimal
 * degrees, with a point or a comma; a position in other words (a grid reference, degrees and minutes) is not.
 *
 * @param placeTables paths of raw tables whose rows belong to a site, a trap or a visit.
 */
export async function findLeaks(
  entries: readonly ArchiveEntry[],
  matters: PrivateMatters,
  placeTables: readonly string[]
): Promise<readonly Leak[]> {
  const {emails, kinds, pictures} = matters
  const positions = positionSearch(matters.points)
  const leaks: Leak[] = []
  for (const entry of entries) {
    const {path} = entry
    const blame = (what: string): void => {
      leaks.push({file: path, what})
    }
    if (packed.test(path)) continue
    if (isPicture(path)) {
      if (pictures.length > 0 && (await tellsPlace(chunksOf(entry.content))))
        blame('the place where the picture was taken, in a form that cannot be taken out')
      continue
    }
    const names = tiedToPlaces.test(path) || placeTables.includes(path) ? kinds : []
    const words = wordSearch([...emails, ...names.flatMap(waysToWrite)])
    const search = positions(path.startsWith('raw/'))
    for await (const [text, end] of textPieces(entry)) {
      search.add(text, end)
      words.add(text, end)
    }
    for (const id of search.found()) blame(`the position of ${id}`)
    if (emails.some(words.has)) blame('the address of a person')
    for (const name of names)
      if (waysToWrite(name).some(words.has)) blame(`${name}, which is not to be named with a place`)
  }
  return leaks
}

/** Which of the points a text tells. */
function positionSearch(points: readonly SecretPoint[]) {
  const secrets = points.map(({id, latitude, longitude, shownDecimals}) => ({
    id,
    parts: [latitude, longitude].map((written) => secretCoordinate(written, shownDecimals))
  }))
  const full = new Set(secrets.flatMap(({parts}) => parts.map((part) => part.full)))
  const shortened = new Set(secrets.flatMap(({parts}) => parts.flatMap((part) => part.shortened)))
  /** @param isWords whether the numbers of the text are few, so that a shortened coordinate is hardly another number. */
  return (isWords: boolean) => {
    const found = new Set<string>()
    return {
      add(text: string, end: number): void {
        if (secrets.length === 0) return
        for (const {written, whole, cut} of tellingNumbers(text, end)) {
          if (full.has(whole)) found.add(whole)
          if (isWords && shortened.has(written)) found.add(written)
          for (const form of cut) if (full.has(form)) found.add(form)
        }
      },
      found: (): readonly string[] =>
        secrets
          .filter(({parts}) =>
            parts.every(
              (part) =>
                (part.full !== undefined && found.has(part.full)) ||
                part.shortened.some((form) => found.has(form))
            )
          )
          .map(({id}) => id)
    }
  }
}
