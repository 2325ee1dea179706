import {lstat, readdir, realpath} from 'node:fs/promises'
import {basename, dirname, isAbsolute, join, relative, resolve, sep} from 'node:path'
import {asDiskTrouble, DiskTrouble, errorCode} from './disk-trouble.ts'
import {isLitter} from './list-folder.ts'
import type {StudyFolder} from './read-study-folder.ts'
import {reportEdits} from './report-edits.ts'
import {isReportFolder} from './report-mark.ts'

/** A place where a report may be written. */
export interface OutputFolder {
  /** Absolute path, links resolved. */
  readonly path: string
  /** As the user named it, for messages. */
  readonly shown: string
}

/**
 * The folder for a report, if it may be written there: it is not the study or round it, not among the study's own
 * files, and what stands there already, if anything, is a report of ours that nobody edited (`force` gives up the
 * edits). What pitfolio did not make is never replaced.
 *
 * @throws DiskTrouble with the reason.
 */
export async function outputFolder(study: StudyFolder, shown: string, force: boolean): Promise<OutputFolder> {
  try {
    const path = await realPathOf(resolve(shown))
    refuseStudyItself(study, path, shown)
    refuseAmongRawFiles(study, path, shown)
    await refuseWhatIsNotOurs(path, shown, force)
    return {path, shown}
  } catch (error) {
    throw asDiskTrouble(error, shown)
  }
}

/** The real path of something that need not be there: links are resolved as far as the path exists. */
async function realPathOf(path: string): Promise<string> {
  try {
    return await realpath(path)
  } catch (error) {
    if (errorCode(error) !== 'ENOENT' || dirname(path) === path) throw error
    return join(await realPathOf(dirname(path)), basename(path))
  }
}

function refuseStudyItself(study: StudyFolder, path: string, shown: string): void {
  if (path === study.root)
    throw new DiskTrouble(`${shown} is the study folder itself`, 'choose a folder inside it, or elsewhere')
  if (isInside(study.root, path)) {
    throw new DiskTrouble(`${shown} holds the study folder`, 'choose a folder inside the study, or elsewhere')
  }
}

function refuseAmongRawFiles(study: StudyFolder, path: string, shown: string): void {
  if (!isInside(path, study.root)) return
  const target = relative(study.root, path).split(sep)
  const raw = [...study.files.keys()]
  for (let length = 1; length <= target.length; length++) {
    const folder = target.slice(0, length).join('/')
    const file = raw.find((name) => name === folder || name.startsWith(`${folder}/`))
    if (file === undefined) continue
    const where =
      length === target.length
        ? 'stands where the study keeps'
        : 'would stand among files of the study, such as'
    throw new DiskTrouble(
      `${shown} ${where} ${file}`,
      'choose a folder that holds nothing of the study; without --out it is report/'
    )
  }
}

async function refuseWhatIsNotOurs(path: string, shown: string, force: boolean): Promise<void> {
  const found = await lstat(path).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return undefined
    throw error
  })
  if (found === undefined) return
  if (!found.isDirectory()) throw new DiskTrouble(`${shown} is a file`, 'choose another place with --out')
  const isOurs = await isReportFolder(path)
  const files = isOurs ? [] : (await readdir(path)).filter((name) => !isLitter(name)).sort()
  if (!isOurs && files.length === 0) return
  const edits = isOurs ? await reportEdits(path) : undefined
  if (edits === undefined) {
    const remedy =
      'only what pitfolio made is replaced: move the folder away, or choose another place with --out'
    throw new DiskTrouble(`${shown} is not a report that pitfolio made`, remedy, files)
  }
  if ([...edits.changed, ...edits.added].some((file) => /^study\.ya?ml$/i.test(file))) {
    throw new DiskTrouble(
      `${shown} holds a study.yaml`,
      'raw files are never replaced: choose another place with --out'
    )
  }
  if (force || edits.changed.length + edits.added.length === 0) return
  throw new DiskTrouble(
    `${shown} was edited since pitfolio wrote it`,
    'move these files away to keep them, or replace them with --force',
    [...edits.changed.map((file) => `changed: ${file}`), ...edits.added.map((file) => `added: ${file}`)]
  )
}

function isInside(path: string, folder: string): boolean {
  const way = relative(folder, path)
  return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way)
}
