import {readdir} from 'node:fs/promises'
import {join} from 'node:path'

const litter = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini'])

/** Whether a file is only what file managers leave behind by looking into a folder. */
export function isLitter(name: string): boolean {
  return litter.has(name)
}

/** Everything in a folder that is not a folder itself, links included, by path in code-unit order. */
export async function listFolder(folder: string): Promise<readonly string[]> {
  const paths: string[] = []
  await list('')
  return paths.sort()

  async function list(inside: string): Promise<void> {
    for (const entry of await readdir(join(folder, inside), {withFileTypes: true})) {
      const path = inside === '' ? entry.name : `${inside}/${entry.name}`
      if (entry.isDirectory()) await list(path)
      else if (!isLitter(entry.name)) paths.push(path)
    }
  }
}
