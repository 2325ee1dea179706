import {createReadStream} from 'node:fs'
import {lstat, readdir} from 'node:fs/promises'
import {join} from 'node:path'
import type {StudySource} from '../model/source.ts'

/** Folders of a study that hold nothing the study is made from. */
const ignored = new Set(['report', 'node_modules', '.git'])

/** A study folder on the disk: its regular files by study-relative path. Links are not followed out of the folder. */
export async function readStudyFolder(folder: string): Promise<StudySource> {
  const files = new Map<string, {size: number}>()
  await list('')
  return {
    files: new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1))),
    read: (path) => createReadStream(join(folder, path), {highWaterMark: 256 * 1024})
  }

  async function list(inside: string): Promise<void> {
    for (const entry of await readdir(join(folder, inside), {withFileTypes: true})) {
      const path = inside === '' ? entry.name : `${inside}/${entry.name}`
      if (entry.isDirectory()) {
        if (!ignored.has(path) && !entry.name.startsWith('.')) await list(path)
      } else if (entry.isFile() && !entry.name.startsWith('.')) {
        files.set(path, {size: (await lstat(join(folder, path))).size})
      }
    }
  }
}
