import {archiveFileName} from '../model/archive-file.ts'
import {type OpenArchive, openZip} from './open-zip.ts'

/** Whether a file is an archive that pitfolio made. Never throws. */
export async function isArchiveOfOurs(path: string): Promise<boolean> {
  let archive: OpenArchive | undefined
  try {
    archive = await openZip(path)
    const name = `data/${archiveFileName}`
    if (!archive.files.has(name) || !archive.files.has('bagit.txt')) return false
    let text = ''
    // The format is named in the first line or two.
    for await (const chunk of archive.read(name)) {
      text += Buffer.from(chunk).toString('utf8')
      if (text.length > 200) break
    }
    return text.slice(0, 200).includes('"format": "pitfolio-archive"')
  } catch {
    return false
  } finally {
    await archive?.close()
  }
}
