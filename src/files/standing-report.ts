import {createReadStream} from 'node:fs'
import {readFile} from 'node:fs/promises'
import {join} from 'node:path'
import type {ArchiveEntry} from '../model/archive-entry.ts'
import {type FileHash, type Provenance, provenanceSchema} from '../model/provenance.ts'
import {listFolder} from './list-folder.ts'
import {reportEdits} from './report-edits.ts'
import {isReportFolder, provenanceFile} from './report-mark.ts'

/** A report that stands on the disk. */
export interface StandingReport {
  readonly provenance: Provenance
  /** Files changed or added since it was written, in words for a list. */
  readonly edits: readonly string[]
  /** Files that it should hold and does not. */
  readonly lost: readonly string[]
  /** Its files, by their paths in it. */
  readonly entries: readonly ArchiveEntry[]
}

/** The report in a folder; undefined where there is none that pitfolio made. */
export async function standingReport(folder: string): Promise<StandingReport | undefined> {
  if (!(await isReportFolder(folder))) return undefined
  const parsed = provenanceSchema.safeParse(JSON.parse(await readFile(join(folder, provenanceFile), 'utf8')))
  const edits = await reportEdits(folder)
  if (!parsed.success || edits === undefined) return undefined
  const files = await listFolder(folder)
  const there = new Set(files)
  return {
    provenance: parsed.data,
    edits: [
      ...edits.changed.map((file) => `changed: ${file}`),
      ...edits.added.map((file) => `added: ${file}`)
    ],
    lost: parsed.data.outputs.map(({path}) => path).filter((path) => !there.has(path)),
    entries: files.map((path) => ({path, content: () => createReadStream(join(folder, path))}))
  }
}

/** Files of the study that are not as they were when the report was made, in words for a list. */
export function changedInputs(then: readonly FileHash[], now: readonly FileHash[]): readonly string[] {
  const sumsOf = (hashes: readonly FileHash[]) => new Map(hashes.map(({path, sha256}) => [path, sha256]))
  const [before, after] = [sumsOf(then), sumsOf(now)]
  return [...new Set([...then, ...now].map(({path}) => path))].sort().flatMap((path) => {
    if (!after.has(path)) return [`${path} is gone`]
    if (!before.has(path)) return [`${path} is new`]
    return before.get(path) === after.get(path) ? [] : [`${path} changed`]
  })
}
