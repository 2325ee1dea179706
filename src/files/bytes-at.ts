import type {FileHandle} from 'node:fs/promises'
import {UntrustedZip} from './untrusted-zip.ts'

/** @throws UntrustedZip where the file ends before. */
export async function bytesAt(handle: FileHandle, position: number, length: number): Promise<Buffer> {
  const bytes = Buffer.alloc(length)
  let filled = 0
  while (filled < length) {
    const {bytesRead} = await handle.read(bytes, filled, length - filled, position + filled)
    if (bytesRead === 0) throw new UntrustedZip('it is cut short')
    filled += bytesRead
  }
  return bytes
}
