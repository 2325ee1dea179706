import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {unzipSync, zipSync} from 'fflate'
import {expect} from 'vitest'
import {run} from '../cli/captured-terminal.ts'
import {temporaryFolder, writeFiles} from '../files/study-on-disk.ts'

export interface MadeArchive {
  readonly study: string
  readonly zip: string
  /** What the command said. */
  readonly out: string
  readonly err: string
  /** Files by path inside the top folder. */
  readonly files: ReadonlyMap<string, Uint8Array>
  readonly top: string
}

/** A study on the disk, archived by the command line. */
export async function madeArchive(
  files: Readonly<Record<string, string | Uint8Array>>,
  ...options: readonly string[]
): Promise<MadeArchive> {
  const folder = temporaryFolder()
  const study = join(folder, 'study')
  writeFiles(study, files)
  const zip = join(folder, 'archive.zip')
  const {code, out, err} = await run(['archive', study, '--out', zip, ...options])
  expect({code, err: code === 0 ? '' : err}).toEqual({code: 0, err: ''})
  return {study, zip, out, err, ...unpacked(zip)}
}

/** The files of a zip, by a library and not by the reader under test. */
export function unpacked(zip: string): {readonly top: string; readonly files: ReadonlyMap<string, Uint8Array>} {
  const found = Object.entries(unzipSync(readFileSync(zip)))
  const top = found[0]![0].split('/')[0]!
  return {top, files: new Map(found.map(([path, bytes]) => [path.slice(top.length + 1), bytes]))}
}

/** Write the files of an archive into a folder, as unpacking does. */
export function unpackTo(folder: string, files: ReadonlyMap<string, Uint8Array>): string {
  writeFiles(folder, Object.fromEntries(files))
  return folder
}

/** The files again as a zip with one folder at its top. */
export function packed(top: string, files: ReadonlyMap<string, Uint8Array>): Uint8Array {
  return zipSync(Object.fromEntries([...files].map(([path, bytes]) => [`${top}/${path}`, bytes])), {
    level: 1,
    mtime: new Date(1980, 0, 1)
  })
}

export function textOf(files: ReadonlyMap<string, Uint8Array>, path: string): string {
  const bytes = files.get(path)
  if (bytes === undefined) throw new Error(`${path} is not in the archive`)
  return Buffer.from(bytes).toString('utf8')
}
