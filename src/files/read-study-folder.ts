import {createReadStream, type Dirent} from 'node:fs'
import {lstat, readdir, realpath, stat} from 'node:fs/promises'
import {dirname, join, sep} from 'node:path'
import type {StudySource} from '../model/source.ts'
import {asDiskTrouble, DiskTrouble, errorCode} from './disk-trouble.ts'
import {isReportFolder, provenanceFile} from './report-mark.ts'

export interface StudyFolder extends StudySource {
  /** Absolute path of the folder, links resolved. */
  readonly root: string
  /** Links that were not followed, and why. */
  readonly skipped: readonly {readonly path: string; readonly reason: string}[]
}

/** Folders of a study that hold nothing the study is made from. */
const ignored = new Set(['report', 'node_modules'])

/**
 * A study folder on the disk: its regular files by study-relative path. A link is followed only to a file inside
 * the folder. Reports that were written into the folder are no part of it.
 *
 * @throws DiskTrouble when the folder is not there, is a file or may not be read.
 */
export async function readStudyFolder(folder: string): Promise<StudyFolder> {
  const root = await rootOf(folder)
  const files = new Map<string, {size: number; real: string}>()
  const skipped: {path: string; reason: string}[] = []
  const top = await entriesOf(root, folder)
  // Without study.yaml the folder may be anything, a whole disk too: look one level down for a misplaced one, no further.
  const depth = top.some(({name}) => name === 'study.yaml') ? Number.POSITIVE_INFINITY : 1
  await list('', top, depth)
  return {
    root,
    skipped,
    files: new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, {size}]) => [path, {size}])),
    read: (path) => chunks(files.get(path)?.real ?? join(root, path), path)
  }

  async function list(inside: string, entries: readonly Dirent[], levels: number): Promise<void> {
    for (const entry of entries) {
      const path = inside === '' ? entry.name : `${inside}/${entry.name}`
      if (entry.name.startsWith('.') || ignored.has(path)) continue
      if (entry.isDirectory()) await enter(path, levels)
      else if (entry.isSymbolicLink()) await follow(path)
      else if (entry.isFile()) await add(path, join(root, path))
    }
  }

  async function enter(path: string, levels: number): Promise<void> {
    if (levels === 0) return
    try {
      const entries = await readdir(join(root, path), {withFileTypes: true})
      const hasMark = entries.some(({name}) => name === provenanceFile)
      if (!(hasMark && (await isReportFolder(join(root, path))))) await list(path, entries, levels - 1)
    } catch (error) {
      // A folder that is no study may hold anything; that some of it is closed to us is no news.
      if (depth === Number.POSITIVE_INFINITY) throw asDiskTrouble(error, path)
    }
  }

  async function add(path: string, real: string): Promise<void> {
    try {
      files.set(path, {size: (await lstat(real)).size, real})
    } catch (error) {
      // Gone between the listing and now, like an editor's temporary file.
      if (errorCode(error) !== 'ENOENT') throw asDiskTrouble(error, path)
    }
  }

  async function follow(path: string): Promise<void> {
    const real = await realpath(join(root, path)).catch(() => undefined)
    if (real === undefined) return skip(path, 'it leads nowhere')
    if (!real.startsWith(root.endsWith(sep) ? root : root + sep))
      return skip(path, 'it leads out of the study folder')
    if (!(await stat(real)).isFile()) return skip(path, 'it leads to a folder')
    await add(path, real)
  }

  function skip(path: string, reason: string): void {
    skipped.push({path, reason})
  }
}

async function rootOf(folder: string): Promise<string> {
  try {
    const root = await realpath(folder)
    if ((await stat(root)).isDirectory()) return root
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw asDiskTrouble(error, folder)
    throw new DiskTrouble(
      `there is no folder ${folder}`,
      'check the spelling, or start a study with `pitfolio init DIR`'
    )
  }
  throw new DiskTrouble(
    `${folder} is a file, not a folder`,
    `name the folder that holds the study: ${dirname(folder)}`
  )
}

async function entriesOf(root: string, shown: string): Promise<readonly Dirent[]> {
  try {
    return await readdir(root, {withFileTypes: true})
  } catch (error) {
    throw asDiskTrouble(error, shown)
  }
}

async function* chunks(real: string, path: string): AsyncIterable<Uint8Array> {
  try {
    yield* createReadStream(real, {highWaterMark: 256 * 1024})
  } catch (error) {
    throw asDiskTrouble(error, path)
  }
}
