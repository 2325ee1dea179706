import type {ArchiveEntry} from '../model/archive-entry.ts'
import type {StudySource} from '../model/source.ts'

/** Files in the making as a source that can be read like a study folder; sizes are known of text and bytes only. */
export function entrySource(entries: readonly ArchiveEntry[]): StudySource {
  const contents = new Map(entries.map(({path, content}) => [path, content]))
  return {
    files: new Map(
      [...contents]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([path, content]) => [path, {size: typeof content === 'function' ? 0 : content.length}])
    ),
    async *read(path) {
      const content = contents.get(path)
      if (content === undefined) throw new Error(`${path} is not among the files`)
      if (typeof content === 'function') yield* content()
      else yield typeof content === 'string' ? new TextEncoder().encode(content) : content
    }
  }
}
