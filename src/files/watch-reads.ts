import type {StudySource} from '../model/source.ts'

/** A source that tells how far the reading has come. */
export function watchReads(inner: StudySource, onBytes: (path: string, bytes: number) => void): StudySource {
  return {files: inner.files, read: (path) => counted(path, inner.read(path), onBytes)}
}

async function* counted(
  path: string,
  chunks: AsyncIterable<Uint8Array>,
  onBytes: (path: string, bytes: number) => void
): AsyncIterable<Uint8Array> {
  for await (const chunk of chunks) {
    onBytes(path, chunk.length)
    yield chunk
  }
}
