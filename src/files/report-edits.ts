import {lstat, readFile} from 'node:fs/promises'
import {join} from 'node:path'
import {provenanceSchema} from '../model/provenance.ts'
import {listFolder} from './list-folder.ts'
import {provenanceFile} from './report-mark.ts'
import {fileHash} from './sha256.ts'

export interface ReportEdits {
  /** Files that are not as pitfolio wrote them. */
  readonly changed: readonly string[]
  /** Files that pitfolio did not write. */
  readonly added: readonly string[]
}

/** What somebody changed in a report since it was written; undefined when its provenance.json cannot be trusted. */
export async function reportEdits(folder: string): Promise<ReportEdits | undefined> {
  const provenance = provenanceSchema.safeParse(
    JSON.parse(await readFile(join(folder, provenanceFile), 'utf8'))
  )
  if (!provenance.success) return undefined
  const written = new Map(provenance.data.outputs.map((output) => [output.path, output]))
  const changed: string[] = []
  const added: string[] = []
  for (const path of await listFolder(folder)) {
    if (path === provenanceFile) continue
    const output = written.get(path)
    if (output === undefined) added.push(path)
    else if (!(await isAsWritten(join(folder, path), output))) changed.push(path)
  }
  return {changed, added}
}

async function isAsWritten(
  path: string,
  output: {readonly bytes: number; readonly sha256: string}
): Promise<boolean> {
  const found = await lstat(path)
  // A link to the same bytes would be lost with the report, so it counts as a change.
  if (!found.isFile() || found.size !== output.bytes) return false
  return fileHash(path, await readFile(path)).sha256 === output.sha256
}
