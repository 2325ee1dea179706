import {lstat, readFile} from 'node:fs/promises'
import {join} from 'node:path'

export const provenanceFile = 'provenance.json'

/** Whether a folder is a report that pitfolio made: it holds our provenance.json. Cheap, and never throws. */
export async function isReportFolder(folder: string): Promise<boolean> {
  const path = join(folder, provenanceFile)
  try {
    if (!(await lstat(path)).isFile()) return false
    const value: unknown = JSON.parse(await readFile(path, 'utf8'))
    return (
      typeof value === 'object' &&
      value !== null &&
      'format' in value &&
      value.format === 'pitfolio-provenance'
    )
  } catch {
    return false
  }
}
