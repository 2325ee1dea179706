import {createHash} from 'node:crypto'
import type {FileHash} from '../model/provenance.ts'

/** Size and SHA-256 of one file's content. */
export function fileHash(path: string, content: string | Uint8Array): FileHash {
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content
  return {path, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex')}
}

/** The same for content that comes in chunks, which are passed on. */
export async function* hashing(
  path: string,
  chunks: AsyncIterable<Uint8Array>,
  done: (hash: FileHash) => void
): AsyncIterable<Uint8Array> {
  const hash = createHash('sha256')
  let bytes = 0
  for await (const chunk of chunks) {
    hash.update(chunk)
    bytes += chunk.length
    yield chunk
  }
  done({path, bytes, sha256: hash.digest('hex')})
}
