import {mkdtempSync, readFileSync, rmSync} from 'node:fs'
import {tmpdir} from 'node:os'
import {join} from 'node:path'
import {unzipSync, zipSync} from 'fflate'
import {expect} from 'vitest'
import type {ArchiveOptions} from '../../src/cli/archive.ts'
import {temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {archived} from './small-report.ts'

type Files = Readonly<Record<string, string | Uint8Array>>

export interface ArchivedFiles {
  readonly zip: Uint8Array
  readonly top: string
  /** Files by path inside the top folder. */
  readonly files: ReadonlyMap<string, Uint8Array>
  /** What the command said. */
  readonly out: string
}

const made = new Map<string, Promise<ArchivedFiles>>()

/** The archive of a study, made once for all tests of a file that only look at it. */
export function archivedFiles(study: Files, options: ArchiveOptions = {}): Promise<ArchivedFiles> {
  const key = JSON.stringify([study, options])
  const known = made.get(key) ?? archivedOnce(study, options)
  made.set(key, known)
  return known
}

async function archivedOnce(study: Files, options: ArchiveOptions): Promise<ArchivedFiles> {
  const folder = mkdtempSync(join(tmpdir(), 'pitfolio-test-'))
  try {
    writeFiles(join(folder, 'study'), study)
    const zip = join(folder, 'archive.zip')
    const {code, out, err} = await archived(join(folder, 'study'), {out: zip, ...options})
    expect({code, err: code === 0 ? '' : err}).toEqual({code: 0, err: ''})
    return {zip: readFileSync(zip), out, ...unpacked(zip)}
  } finally {
    rmSync(folder, {recursive: true, force: true})
  }
}

/** The same, with the study left on the disk until the test is over. */
export async function studyAndArchive(files: Files): Promise<{readonly study: string; readonly zip: string}> {
  const folder = temporaryFolder()
  const study = join(folder, 'study')
  writeFiles(study, files)
  const zip = join(folder, 'archive.zip')
  const {zip: bytes} = await archivedFiles(files)
  writeFiles(folder, {'archive.zip': bytes})
  return {study, zip}
}

/** The files of a zip, by a library and not by the reader under test. */
export function unpacked(zip: string): {
  readonly top: string
  readonly files: ReadonlyMap<string, Uint8Array>
} {
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
