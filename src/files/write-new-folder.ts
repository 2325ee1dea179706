import {mkdir, readdir, rm, writeFile} from 'node:fs/promises'
import {dirname, join} from 'node:path'
import {asDiskTrouble, DiskTrouble, errorCode} from './disk-trouble.ts'
import {isLitter} from './list-folder.ts'

/**
 * Write files into a folder that is not there yet, or is empty. Nothing that stands there is ever touched, and when
 * something fails, what was written goes again.
 *
 * @throws DiskTrouble when the folder holds anything, or the disk does not let us.
 */
export async function writeNewFolder(
  folder: string,
  files: ReadonlyMap<string, string | Uint8Array>
): Promise<void> {
  await refuseFull(folder)
  const made: string[] = []
  try {
    await makeFolder(folder, made)
    for (const [path, content] of files) {
      await makeFolder(dirname(join(folder, path)), made)
      await writeFile(join(folder, path), content, {flag: 'wx'})
      made.push(join(folder, path))
    }
  } catch (error) {
    for (const path of made.reverse()) await rm(path, {recursive: true, force: true}).catch(() => {})
    throw asDiskTrouble(error, folder)
  }
}

async function refuseFull(folder: string): Promise<void> {
  // A new repository, or what a file manager leaves behind, is still an empty folder to its owner.
  const names = await readdir(folder).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return []
    throw errorCode(error) === 'ENOTDIR'
      ? new DiskTrouble(`${folder} is a file`, 'choose the name of a new folder')
      : asDiskTrouble(error, folder)
  })
  const files = names.filter((name) => name !== '.git' && !isLitter(name)).sort()
  if (files.length === 0) return
  throw new DiskTrouble(
    `${folder} is not empty`,
    'choose the name of a new folder; nothing was written',
    files
  )
}

async function makeFolder(folder: string, made: string[]): Promise<void> {
  const first = await mkdir(folder, {recursive: true})
  if (first !== undefined) made.push(first)
}
