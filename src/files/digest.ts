import {createHash} from 'node:crypto'
import type {FileDigest} from '../model/file-digest.ts'

/** Takes the size and both checksums of bytes as they pass by. */
export interface Digester {
  add(chunk: Uint8Array): void
  done(): FileDigest
}

export function digester(path: string): Digester {
  const sha256 = createHash('sha256')
  const sha512 = createHash('sha512')
  let bytes = 0
  return {
    add(chunk) {
      sha256.update(chunk)
      sha512.update(chunk)
      bytes += chunk.length
    },
    done: () => ({path, bytes, sha256: sha256.digest('hex'), sha512: sha512.digest('hex')})
  }
}

/** Read a whole file for its digest. */
export async function digestOf(path: string, chunks: AsyncIterable<Uint8Array>): Promise<FileDigest> {
  const digest = digester(path)
  for await (const chunk of chunks) digest.add(chunk)
  return digest.done()
}
