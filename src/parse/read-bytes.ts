import type {StudySource} from '../model/source.ts'

/** A whole file of the study as it is, such as a photograph. */
export async function readBytes(source: StudySource, file: string): Promise<Uint8Array> {
  const chunks: Uint8Array[] = []
  let length = 0
  for await (const chunk of source.read(file)) {
    chunks.push(chunk)
    length += chunk.length
  }
  const bytes = new Uint8Array(length)
  let at = 0
  for (const chunk of chunks) {
    bytes.set(chunk, at)
    at += chunk.length
  }
  return bytes
}
