import {createReadStream} from 'node:fs'
import {stat} from 'node:fs/promises'
import {join} from 'node:path'
import type {StudySource} from '../model/source.ts'
import {listFolder} from './list-folder.ts'

/** The files of a report on the disk, to be read on demand. */
export async function reportSource(folder: string): Promise<StudySource> {
  const paths = await listFolder(folder)
  const sizes = await Promise.all(paths.map(async (path) => (await stat(join(folder, path))).size))
  return {
    files: new Map(paths.map((path, index) => [path, {size: sizes[index]!}])),
    read: (path) => createReadStream(join(folder, path))
  }
}
