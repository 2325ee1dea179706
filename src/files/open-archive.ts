import {readdir, stat} from 'node:fs/promises'
import {join} from 'node:path'
import {asDiskTrouble, DiskTrouble} from './disk-trouble.ts'
import {openFolderArchive} from './open-folder-archive.ts'
import {type OpenArchive, openZip} from './open-zip.ts'

const mark = 'bagit.txt'

/**
 * An archive of pitfolio, as a zip or unpacked.
 *
 * @throws DiskTrouble where nothing is there, or it is no archive or not to be trusted.
 */
export async function openArchive(path: string): Promise<OpenArchive> {
  try {
    const found = await stat(path)
    const archive = found.isDirectory()
      ? await openFolderArchive(await archiveFolder(path))
      : await openZip(path)
    if (archive.files.has(mark) || archive.files.has('data/archive.json')) return archive
    await archive.close()
    throw new DiskTrouble(
      `${path} is not an archive of pitfolio: it holds neither ${mark} nor data/archive.json`,
      'name the zip that `pitfolio archive` wrote, or the folder it was unpacked to'
    )
  } catch (error) {
    throw asDiskTrouble(error, path)
  }
}

/** The folder itself, or the one folder inside it where a program unpacked the archive into a folder of its own. */
async function archiveFolder(path: string): Promise<string> {
  const entries = await readdir(path, {withFileTypes: true})
  if (entries.some(({name}) => name === mark)) return path
  const folders = entries.filter((entry) => entry.isDirectory())
  const inner = folders.length === 1 ? join(path, folders[0]!.name) : undefined
  const isInside = inner !== undefined && (await readdir(inner)).includes(mark)
  return isInside ? inner : path
}
