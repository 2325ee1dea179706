import type {ArchiveEntry} from '../../model/archive-entry.ts'
import type {Study} from '../../model/study.ts'
import {isFiner, type PrivateMatters} from './private-matters.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/** A file that gives away what is held back everywhere else. */
export interface Leak {
  readonly file: string
  /** `the position of OAK2`, `the address of a person`. */
  readonly what: string
}

interface Secret {
  readonly what: string
  /** All of them in one file give it away: a latitude alone may be any number. */
  readonly parts: readonly string[]
}

/** Fewer decimals could be any number of a report. */
const tellingDecimals = 3
/** Packed formats are made of the same text as the pages beside them. */
const packed = /\.(png|jpe?g|gif|webp|docx|xlsx|pdf|zip)$/i

/** Search files for the positions and addresses that an archive must not hold. */
export async function findLeaks(
  entries: readonly ArchiveEntry[],
  study: Study,
  privacy: StudyPrivacy,
  matters: PrivateMatters
): Promise<readonly Leak[]> {
  const secrets = secretsOf(study, privacy, matters)
  const parts = [...new Set(secrets.flatMap((secret) => secret.parts))]
  if (parts.length === 0) return []
  const leaks: Leak[] = []
  for (const entry of entries) {
    if (packed.test(entry.path)) continue
    const found = await partsIn(entry, parts)
    if (found.size === 0) continue
    for (const secret of secrets)
      if (secret.parts.every((part) => found.has(part))) leaks.push({file: entry.path, what: secret.what})
  }
  return leaks
}

function secretsOf(study: Study, privacy: StudyPrivacy, {emails}: PrivateMatters): readonly Secret[] {
  const points = [
    ...study.sites.map((site) => ({id: site.siteId, point: site, place: privacy.placeOfSite(site.siteId)})),
    ...study.traps.map((trap) => ({id: trap.trapId, point: trap, place: privacy.placeOfTrap(trap.trapId)}))
  ]
  const positions = points.flatMap(({id, point, place}): Secret[] => {
    const {latitude, longitude} = point
    if (!isFiner(point, place) || latitude === undefined || longitude === undefined) return []
    const parts = [latitude, longitude].map((degrees) => `${Math.abs(degrees)}`)
    const isTelling = parts.every((part) => (part.split('.')[1] ?? '').length >= tellingDecimals)
    return isTelling ? [{what: `the position of ${id}`, parts}] : []
  })
  return [...positions, ...emails.map((email) => ({what: 'the address of a person', parts: [email]}))]
}

async function partsIn({content}: ArchiveEntry, parts: readonly string[]): Promise<ReadonlySet<string>> {
  const found = new Set<string>()
  // Longer ones first, because the first that fits is taken.
  const inOrder = [...parts].sort((a, b) => b.length - a.length)
  const pattern = new RegExp(inOrder.map((part) => escapedFor(part)).join('|'), 'g')
  const longest = Math.max(...parts.map((part) => part.length))
  const decoder = new TextDecoder('utf-8')
  let rest = ''
  for await (const chunk of chunksOf(content)) {
    const text = rest + decoder.decode(chunk, {stream: true})
    for (const [part] of text.matchAll(pattern)) found.add(part.replace(',', '.'))
    rest = text.slice(-longest)
  }
  return found
}

function chunksOf(content: ArchiveEntry['content']): AsyncIterable<Uint8Array> | Iterable<Uint8Array> {
  if (typeof content === 'function') return content()
  return [typeof content === 'string' ? new TextEncoder().encode(content) : content]
}

/** As a pattern, with either decimal mark. */
function escapedFor(part: string): string {
  const escaped = part.replace(/[\\^$*+?()[\]{}|]/g, '\\$&')
  return /^\d+\.\d+$/.test(part) ? escaped.replace('.', '[.,]') : escaped.replaceAll('.', '\\.')
}
