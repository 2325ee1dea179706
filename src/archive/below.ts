import type {ArchiveEntry} from '../model/archive-entry.ts'

/** The same files in a folder, `raw/` for instance. */
export function below(folder: string, entries: readonly ArchiveEntry[]): readonly ArchiveEntry[] {
  return entries.map(({path, content}) => ({path: folder + path, content}))
}
