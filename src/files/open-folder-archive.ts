import {createReadStream} from 'node:fs'
import {readdir, realpath, stat} from 'node:fs/promises'
import {basename, join} from 'node:path'
import {asDiskTrouble} from './disk-trouble.ts'
import {isLitter} from './list-folder.ts'
import {DamagedMember, type OpenArchive} from './open-zip.ts'
import {UntrustedZip} from './untrusted-zip.ts'

/** Far above any archive of pitfolio. */
const mostFiles = 0xffff

/**
 * An unpacked archive. Links are refused, not followed: they could lead anywhere.
 *
 * @throws UntrustedZip where the folder holds a link or something that is no file.
 */
export async function openFolderArchive(folder: string): Promise<OpenArchive> {
  const root = await realpath(folder)
  const files = new Map<string, {size: number}>()
  await list('')
  return {
    top: basename(root),
    files: new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1))),
    read: (path) => chunks(join(root, path)),
    close: async () => {}
  }

  async function list(inside: string): Promise<void> {
    for (const entry of await readdir(join(root, inside), {withFileTypes: true})) {
      const path = inside === '' ? entry.name : `${inside}/${entry.name}`
      if (entry.isDirectory()) await list(path)
      else if (entry.isSymbolicLink()) throw new UntrustedZip(`${path} is a link`, 'unpack the archive again')
      else if (!entry.isFile())
        throw new UntrustedZip(`${path} is neither a file nor a folder`, 'unpack the archive again')
      else if (!isLitter(entry.name)) files.set(path, {size: (await stat(join(root, path))).size})
      if (files.size > mostFiles)
        throw new UntrustedZip(
          'the folder holds more files than any archive',
          'name the folder of the archive itself'
        )
    }
  }
}

async function* chunks(path: string): AsyncIterable<Uint8Array> {
  try {
    yield* createReadStream(path, {highWaterMark: 256 * 1024})
  } catch (error) {
    const trouble = asDiskTrouble(error, 'it')
    throw new DamagedMember(trouble instanceof Error ? trouble.message : String(trouble))
  }
}
