import {mkdirSync, writeFileSync} from 'node:fs'
import {mkdir, rm, rmdir} from 'node:fs/promises'
import {dirname, join, relative, sep} from 'node:path'
import type {Outputs} from '../model/source.ts'
import {asDiskTrouble} from './disk-trouble.ts'
import {type OutputFolder, outputFolder} from './output-folder.ts'
import type {StudyFolder} from './read-study-folder.ts'
import {swapFolders} from './swap-folders.ts'
import {clearDeadWorkFolders, openWorkFolder} from './work-folder.ts'

/**
 * Write a whole report, or nothing: the files are made in a folder beside the target, which then takes its place.
 *
 * @throws DiskTrouble when the target may not be replaced or the disk does not let us; the old report then stands
 * as before, and nothing else is left behind.
 */
export async function writeReport(
  study: StudyFolder,
  target: OutputFolder,
  outputs: Outputs,
  force: boolean
): Promise<void> {
  const made = await makeParents(target)
  try {
    await clearDeadWorkFolders(target.path)
    // Asked again: making the report took its time, and somebody may have saved a file in the old one meanwhile.
    await outputFolder(study, target.shown, force)
    const work = await openWorkFolder(target.path)
    try {
      writeFiles(work.fresh, outputs)
      await swapFolders(target.path, work.fresh, work.old)
    } finally {
      // Left-overs that a lock holds back are cleared by the next run.
      await rm(work.path, {recursive: true, force: true}).catch(() => {})
    }
  } catch (error) {
    await removeParents(made, dirname(target.path))
    throw asDiskTrouble(error, target.shown)
  }
}

/** The folders above the target; gives the uppermost that had to be made. */
async function makeParents(target: OutputFolder): Promise<string | undefined> {
  try {
    return await mkdir(dirname(target.path), {recursive: true})
  } catch (error) {
    throw asDiskTrouble(error, target.shown)
  }
}

/** Take away the folders that were made for nothing, from the inside out; one that is not empty stays. */
async function removeParents(uppermost: string | undefined, innermost: string): Promise<void> {
  if (uppermost === undefined) return
  const inside = relative(uppermost, innermost)
    .split(sep)
    .filter((part) => part !== '')
  for (let length = inside.length; length >= 0; length--) {
    await rmdir(join(uppermost, ...inside.slice(0, length))).catch(() => {})
  }
}

/** One after the other, and not by way of other threads: for small files the way takes longer than the writing. */
function writeFiles(folder: string, outputs: Outputs): void {
  const folders = new Set<string>()
  for (const [path, content] of outputs) {
    // Names come from our own code: a path that leads out of the folder is our own bug.
    if (
      path === '' ||
      path.split('/').some((part) => part === '' || part === '.' || part === '..' || part.includes('\\'))
    ) {
      throw new Error(`a report may not hold a file named ${JSON.stringify(path)}`)
    }
    const file = join(folder, path)
    if (!folders.has(dirname(file))) mkdirSync(dirname(file), {recursive: true})
    folders.add(dirname(file))
    // wx: on disks that do not tell capitals apart, two names must not become one file unnoticed.
    writeFileSync(file, content, {flag: 'wx'})
  }
}
