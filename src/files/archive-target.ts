import {lstat, mkdir, realpath, rename, rm} from 'node:fs/promises'
import {basename, dirname, join, resolve, sep} from 'node:path'
import type {ArchiveStage} from '../model/archive-entry.ts'
import {isArchiveOfOurs} from './archive-mark.ts'
import {asDiskTrouble, DiskTrouble, errorCode} from './disk-trouble.ts'
import type {StudyFolder} from './read-study-folder.ts'
import {isReportFolder} from './report-mark.ts'
import {clearDeadWorkFolders, openWorkFolder} from './work-folder.ts'
import {type WrittenZip, writeZip} from './write-zip.ts'

/**
 * Write an archive, or nothing: it is made in a folder beside its place and then moved there.
 *
 * @param shown the file as the user named it.
 * @param check called with what was written, before it takes its place; what it throws keeps the old file.
 * @throws DiskTrouble where the place is not free or the disk does not let us.
 */
export async function writeArchive(
  study: StudyFolder,
  shown: string,
  top: string,
  stages: readonly ArchiveStage[],
  check: (written: WrittenZip) => void,
  onFile: (path: string) => void
): Promise<WrittenZip> {
  const target = resolve(shown)
  try {
    await refuseTarget(study, shown)
    await mkdir(dirname(target), {recursive: true})
    await clearDeadWorkFolders(target)
    const work = await openWorkFolder(target)
    try {
      const fresh = join(work.fresh, basename(target))
      const written = await writeZip(fresh, top, stages, onFile)
      check(written)
      // Asked again: making it took its time.
      await refuseTarget(study, shown)
      await rename(fresh, target)
      return written
    } finally {
      await rm(work.path, {recursive: true, force: true}).catch(() => {})
    }
  } catch (error) {
    throw asDiskTrouble(error, shown)
  }
}

/** @throws DiskTrouble where the file may not be written: only an archive of ours is ever replaced. */
export async function refuseTarget(study: StudyFolder, shown: string): Promise<void> {
  const target = resolve(shown)
  const folder = await nearestFolder(dirname(target))
  const report = join(study.root, 'report')
  if (folder === report || folder.startsWith(report + sep) || (await isReportFolder(folder))) {
    throw new DiskTrouble(`${shown} would stand in a report`, 'choose another place with --out')
  }
  const found = await lstat(target).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return undefined
    throw asDiskTrouble(error, shown)
  })
  if (found === undefined) return
  if (found.isDirectory())
    throw new DiskTrouble(`${shown} is a folder`, `name a file: ${join(shown, 'archive.zip')}`)
  if (!found.isFile() || !(await isArchiveOfOurs(target))) {
    throw new DiskTrouble(
      `${shown} is there already, and is no archive that pitfolio made`,
      'only what pitfolio made is replaced: move it away, or choose another place with --out'
    )
  }
}

/** The real path of the nearest folder above that is there. */
async function nearestFolder(folder: string): Promise<string> {
  try {
    return await realpath(folder)
  } catch (error) {
    if (errorCode(error) !== 'ENOENT' || dirname(folder) === folder) throw asDiskTrouble(error, folder)
    return join(await nearestFolder(dirname(folder)), basename(folder))
  }
}
