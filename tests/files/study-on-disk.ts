import {mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync} from 'node:fs'
import {tmpdir} from 'node:os'
import {dirname, join} from 'node:path'
import {onTestFinished} from 'vitest'
import {baseStudy} from '../../src/rules/base-study.ts'

/** A folder of its own for one test, gone when the test is over. */
export function temporaryFolder(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'pitfolio-test-')))
  onTestFinished(() => rmSync(folder, {recursive: true, force: true}))
  return folder
}

export function writeFiles(folder: string, files: Readonly<Record<string, string | Uint8Array>>): void {
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), {recursive: true})
    writeFileSync(join(folder, path), content)
  }
}

/** The small sound study on the disk, with files laid over it; `null` leaves one out. */
export function studyOnDisk(files: Readonly<Record<string, string | Uint8Array | null>> = {}): string {
  const folder = join(temporaryFolder(), 'study')
  const all = Object.entries<string | Uint8Array | null>({...baseStudy, ...files})
  writeFiles(
    folder,
    Object.fromEntries(all.filter((entry): entry is [string, string | Uint8Array] => entry[1] !== null))
  )
  return folder
}

/** Everything below a folder, hidden files and empty folders too, as text: two of these are equal when nothing was touched. */
export function everythingIn(folder: string): Readonly<Record<string, string>> {
  const found: Record<string, string> = {}
  for (const entry of readdirSync(folder, {withFileTypes: true, recursive: true})) {
    const path = join(entry.parentPath, entry.name)
    const name = path.slice(folder.length + 1)
    found[name] = entry.isFile()
      ? readFileSync(path).toString('latin1')
      : entry.isDirectory()
        ? '(folder)'
        : '(link)'
  }
  return Object.fromEntries(Object.entries(found).sort(([a], [b]) => (a < b ? -1 : 1)))
}

/** Data rows of the tables of a study, for tests that are not about how many there are. */
export function rowsIn(study: string): number {
  return readdirSync(study)
    .filter((name) => name.endsWith('.csv'))
    .reduce((sum, name) => sum + readFileSync(join(study, name), 'utf8').trimEnd().split('\n').length - 1, 0)
}
