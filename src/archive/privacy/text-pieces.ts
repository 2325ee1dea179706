import type {ArchiveEntry} from '../../model/archive-entry.ts'

/** Longer than any number or word that is looked for; so much of a chunk waits for the next one. */
const overlap = 256

/** The text of a file in pieces, each with the place up to which what begins there stands whole in it. */
export async function* textPieces({
  content
}: ArchiveEntry): AsyncIterable<readonly [text: string, end: number]> {
  let decoder: InstanceType<typeof TextDecoder> | undefined
  let rest = ''
  for await (const chunk of chunksOf(content)) {
    decoder ??= new TextDecoder(encodingOf(chunk))
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

/**
 * How the letters are written that every search is for, by the first two bytes: a byte of nought beside a letter, or
 * the mark of UTF-16. In all other encodings of the reader they have the bytes of UTF-8.
 */
function encodingOf([first, second]: Uint8Array): string {
  if (first === undefined || second === undefined) return 'utf-8'
  if ((first === 0xff && second === 0xfe) || (first !== 0 && second === 0)) return 'utf-16le'
  return (first === 0xfe && second === 0xff) || (first === 0 && second !== 0) ? 'utf-16be' : 'utf-8'
}
