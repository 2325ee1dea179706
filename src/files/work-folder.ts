import {lstat, mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile} from 'node:fs/promises'
import {hostname} from 'node:os'
import {basename, dirname, join} from 'node:path'
import {errorCode} from './disk-trouble.ts'

/**
 * A folder beside the report in which the new one is made: renaming is only sure within one disk, and a half-written
 * report never stands under its own name. It holds `owner.json` (whose it is), `new` and, for a moment, `old`.
 */
export interface WorkFolder {
  readonly path: string
  readonly fresh: string
  readonly old: string
}

const ownerFile = 'owner.json'
const format = 'pitfolio-work'

export async function openWorkFolder(target: string): Promise<WorkFolder> {
  const path = await mkdtemp(join(dirname(target), prefixFor(target)))
  await writeFile(
    join(path, ownerFile),
    JSON.stringify({format, target: basename(target), pid: process.pid, host: hostname()})
  )
  const fresh = join(path, 'new')
  await mkdir(fresh)
  return {path, fresh, old: join(path, 'old')}
}

/**
 * Clear away what runs that died have left beside a report, and put back the old report where a run died between
 * taking it away and putting the new one in its place. Only folders that are surely ours: made for this report, on
 * this machine, by a process that is no more, and with nothing in them that we do not put there.
 */
export async function clearDeadWorkFolders(target: string): Promise<void> {
  const parent = dirname(target)
  for (const name of (await readdir(parent)).sort()) {
    const path = join(parent, name)
    if (!name.startsWith(prefixFor(target)) || !(await isDead(path, target))) continue
    if (!(await exists(target)) && (await exists(join(path, 'old')))) await rename(join(path, 'old'), target)
    await rm(path, {recursive: true, force: true})
  }
}

function prefixFor(target: string): string {
  return `.${basename(target)}.pitfolio-`
}

async function isDead(path: string, target: string): Promise<boolean> {
  if (!(await lstat(path)).isDirectory()) return false
  const names = await readdir(path)
  if (names.some((name) => ![ownerFile, 'new', 'old'].includes(name))) return false
  try {
    const owner: unknown = JSON.parse(await readFile(join(path, ownerFile), 'utf8'))
    if (typeof owner !== 'object' || owner === null) return false
    const {format: written, target: made, pid, host} = owner as Readonly<Record<string, unknown>>
    return (
      written === format &&
      made === basename(target) &&
      host === hostname() &&
      typeof pid === 'number' &&
      !isRunning(pid)
    )
  } catch {
    return false
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return errorCode(error) !== 'ESRCH'
  }
}

export async function exists(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false
  )
}
