import type {FileDigest} from './file-digest.ts'

/** One file of an archive in the making. */
export interface ArchiveEntry {
  /** Path inside the archive, with `/` between its parts. */
  readonly path: string
  /** Text (UTF-8), bytes, or a source of chunks, so that a million rows need not fit in memory. */
  readonly content: string | Uint8Array | (() => AsyncIterable<Uint8Array> | Iterable<Uint8Array>)
}

/**
 * Files that are written together. Files that describe others (checksums, sizes) belong to a later stage: it is
 * given the digests of everything written before it.
 */
export type ArchiveStage = (written: readonly FileDigest[]) => readonly ArchiveEntry[]
