import type {FileHash} from '../model/provenance.ts'
import type {StudySource} from '../model/source.ts'
import {DiskTrouble} from './disk-trouble.ts'
import {hashing} from './sha256.ts'

export interface RecordedSource {
  readonly source: StudySource
  /** Every file that was read, with the hash of the bytes that were read, by path in code-unit order. */
  inputs(): Promise<readonly FileHash[]>
}

/**
 * A source that remembers what was read from it. Files that nobody reads are no inputs, so a stray file in the
 * folder changes no report.
 *
 * @throws DiskTrouble when a file gives other bytes the second time: the report would be made of both.
 */
export function recordReads(inner: StudySource): RecordedSource {
  const hashes = new Map<string, FileHash>()
  const touched = new Set<string>()
  const note = (hash: FileHash): void => {
    const before = hashes.get(hash.path)
    if (before !== undefined && before.sha256 !== hash.sha256) {
      throw new DiskTrouble(
        `${hash.path} changed while it was being read`,
        'save it, wait until it is written, and run again'
      )
    }
    hashes.set(hash.path, hash)
  }
  const read = (path: string): AsyncIterable<Uint8Array> => {
    touched.add(path)
    return hashing(path, inner.read(path), note)
  }
  return {
    source: {files: inner.files, read},
    async inputs() {
      for (const path of touched) {
        if (!hashes.has(path)) for await (const _ of hashing(path, inner.read(path), note));
      }
      return [...hashes.values()].sort((a, b) => (a.path < b.path ? -1 : 1))
    }
  }
}
