import type {ArchiveEntry} from '../../model/archive-entry.ts'
import type {PrivateMatters} from './private-matters.ts'

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
  matters: PrivateMatters
): Promise<readonly Leak[]> {
  const secrets = secretsOf(matters)
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

function secretsOf({points, emails}: PrivateMatters): readonly Secret[] {
  const positions = points.flatMap(({id, latitude, longitude}): Secret[] => {
    const parts = [latitude, longitude].map(plainDegrees)
    const isTelling = parts.every((part) => (part.split('.')[1] ?? '').length >= tellingDecimals)
    return isTelling ? [{what: `the position of ${id}`, parts}] : []
  })
  return [...positions, ...emails.map((email) => ({what: 'the address of a person', parts: [email]}))]
}

/** `55.4034` for `-55,40340`: as any text would hold it. */
function plainDegrees(written: string): string {
  const digits = /\d+[.,]\d+/.exec(written)?.[0].replace(',', '.') ?? ''
  return digits.replace(/0+$/, '')
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
