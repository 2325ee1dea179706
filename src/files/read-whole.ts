import type {StudySource} from '../model/source.ts'
import {UntrustedZip} from './untrusted-zip.ts'

/** Far above any results.json: a million catch rows make about 15 megabytes. */
const largest = 128 * 1024 * 1024

/**
 * A file that must be held whole, such as JSON.
 *
 * @throws UntrustedZip where it is larger than any that pitfolio writes.
 */
export async function readWhole(source: StudySource, path: string): Promise<Buffer> {
  if ((source.files.get(path)?.size ?? 0) > largest)
    throw new UntrustedZip(`${path} is larger than any that pitfolio writes`)
  const chunks: Uint8Array[] = []
  let size = 0
  for await (const chunk of source.read(path)) {
    size += chunk.length
    if (size > largest) throw new UntrustedZip(`${path} is larger than any that pitfolio writes`)
    chunks.push(chunk)
  }
  return Buffer.concat(chunks)
}
