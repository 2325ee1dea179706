import type {ChecksumKind} from '../model/file-digest.ts'
import {manifestText} from './bag.ts'

/** A manifest of a bag as it was found. */
export interface ReadManifest {
  readonly file: string
  readonly of: 'payload' | 'tags'
  readonly kind: ChecksumKind
  /** Path to checksum; lines that say nothing are left out. */
  readonly lines: ReadonlyMap<string, string>
  /** What is wrong with its form. */
  readonly trouble: string | undefined
}

const length = {sha256: 64, sha512: 128} as const

/**
 * Read a manifest that pitfolio wrote. Stricter than RFC 8493 asks of readers: a manifest that is not as pitfolio
 * writes it was changed, even where it still means the same.
 */
export function readManifest(file: string, text: string): ReadManifest | undefined {
  const [, tag, kind] = /^(tag)?manifest-(sha256|sha512)\.txt$/.exec(file) ?? []
  if (kind !== 'sha256' && kind !== 'sha512') return undefined
  const lines = new Map<string, string>()
  let trouble: string | undefined
  const pattern = new RegExp(`^([0-9a-f]{${length[kind]}})  (.+)$`)
  for (const [index, line] of text.split('\n').entries()) {
    if (line === '') continue
    const [, checksum = '', encoded = ''] = pattern.exec(line) ?? []
    const path = decoded(encoded)
    if (checksum === '') trouble ??= `line ${index + 1} is not a checksum and a path`
    else if (isUnsafe(path)) trouble ??= `line ${index + 1} names a path outside the archive`
    else if (lines.has(path)) trouble ??= `line ${index + 1} names ${path} a second time`
    else lines.set(path, checksum)
  }
  if (trouble === undefined && manifestText(lines) !== text)
    trouble = 'its lines are not as pitfolio writes them'
  return {file, of: tag === undefined ? 'payload' : 'tags', kind, lines, trouble}
}

function decoded(path: string): string {
  return path.replace(/%0A/gi, '\n').replace(/%0D/gi, '\r').replace(/%25/g, '%')
}

function isUnsafe(path: string): boolean {
  return (
    path.startsWith('/') ||
    path.startsWith('~') ||
    path.split('/').some((part) => part === '..' || part === '')
  )
}
