import type {StudySource} from '../src/model/source.ts'

/** A study folder that is not on any disk. */
export function memorySource(
  files: Readonly<Record<string, string | Uint8Array>> | ReadonlyMap<string, string | Uint8Array>
): StudySource {
  const entries =
    files instanceof Map ? [...files.entries()] : Object.entries(files as Record<string, string | Uint8Array>)
  const bytes = new Map(
    entries.map(
      ([path, content]) =>
        [path, typeof content === 'string' ? new TextEncoder().encode(content) : content] as const
    )
  )
  return {
    files: new Map(
      [...bytes].sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, content]) => [path, {size: content.length}])
    ),
    async *read(path) {
      const content = bytes.get(path) ?? new Uint8Array()
      // Small chunks, so that every test also tests records that straddle two of them.
      for (let start = 0; start < content.length; start += 1000) yield content.subarray(start, start + 1000)
    }
  }
}
