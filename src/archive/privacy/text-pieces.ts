import type {ArchiveEntry} from '../../model/archive-entry.ts'

/** Longer than any number or word that is looked for; so much of a chunk waits for the next one. */
const overlap = 256

/** The text of a file in pieces, each with the place up to which what begins there stands whole in it. */
export async function* textPieces({
  content
}: ArchiveEntry): AsyncIterable<readonly [text: string, end: number]> {
  const decoder = new TextDecoder('utf-8')
  let rest = ''
  for await (const chunk of chunksOf(content)) {
    const text = rest + decoder.decode(chunk, {stream: true})
    const end = Math.max(0, text.length - overlap)
    yield [text, end]
    rest = text.slice(end)
  }
  yield [rest, rest.length]
}

export function chunksOf(content: ArchiveEntry['content']): AsyncIterable<Uint8Array> | Iterable<Uint8Array> {
  if (typeof content === 'function') return content()
  return [typeof content === 'string' ? new TextEncoder().encode(content) : content]
}
