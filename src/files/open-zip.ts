import {type FileHandle, open} from 'node:fs/promises'
import {pipeline, Readable} from 'node:stream'
import {createInflateRaw} from 'node:zlib'
import type {StudySource} from '../model/source.ts'
import {UntrustedZip} from './untrusted-zip.ts'
import {type ZipMember, zipDirectory} from './zip-directory.ts'

/** The files of an archive, read from where it stands: nothing is unpacked to the disk. */
export interface OpenArchive extends StudySource {
  /** The folder inside the archive that holds everything, or the folder's own name. */
  readonly top: string
  close(): Promise<void>
}

const chunkSize = 256 * 1024

/**
 * A zip whose files are read on demand, in chunks.
 *
 * @throws UntrustedZip for what an archive of pitfolio never is.
 */
export async function openZip(path: string): Promise<OpenArchive> {
  const handle = await open(path, 'r')
  try {
    const members = await zipDirectory(handle, (await handle.stat()).size)
    const tops = new Set(members.map(({name}) => name.split('/')[0] ?? ''))
    const [top = ''] = tops
    if (tops.size !== 1)
      throw new UntrustedZip('an archive has one folder at its top, and this has several, or files')
    const files = new Map(
      members
        .filter(({isDirectory}) => !isDirectory)
        .map((member) => [member.name.slice(top.length + 1), member] as const)
        .sort(([a], [b]) => (a < b ? -1 : 1))
    )
    if (files.has('')) throw new UntrustedZip('an archive has one folder at its top, and this has a file')
    return {
      top,
      files: new Map([...files].map(([name, {size}]) => [name, {size}])),
      read(name) {
        const member = files.get(name)
        if (member === undefined) throw new Error(`${name} is not in the zip`)
        return contentOf(handle, member)
      },
      close: () => handle.close()
    }
  } catch (error) {
    await handle.close()
    throw error
  }
}

/** A file of the archive whose bytes cannot be had. */
export class DamagedMember extends Error {}

async function* contentOf(handle: FileHandle, member: ZipMember): AsyncIterable<Uint8Array> {
  const packed = packedBytes(handle, member)
  const chunks = member.isDeflated ? inflated(packed, member.packedSize) : packed
  let size = 0
  for await (const chunk of chunks) {
    size += chunk.length
    if (size > member.size) throw new DamagedMember('it unpacks to more than the zip says')
    yield chunk
  }
  if (size !== member.size) throw new DamagedMember('it unpacks to less than the zip says')
}

async function* packedBytes(handle: FileHandle, {start, packedSize}: ZipMember): AsyncIterable<Uint8Array> {
  for (let done = 0; done < packedSize; ) {
    const bytes = Buffer.allocUnsafe(Math.min(chunkSize, packedSize - done))
    const {bytesRead} = await handle.read(bytes, 0, bytes.length, start + done)
    if (bytesRead === 0) throw new DamagedMember('the zip is cut short')
    done += bytesRead
    yield bytes.subarray(0, bytesRead)
  }
}

async function* inflated(packed: AsyncIterable<Uint8Array>, packedSize: number): AsyncIterable<Uint8Array> {
  const inflate = createInflateRaw({chunkSize})
  // What fails in either of the two comes out of the loop below.
  pipeline(Readable.from(packed), inflate, () => {})
  try {
    for await (const chunk of inflate) yield chunk as Uint8Array
  } catch (error) {
    if (error instanceof DamagedMember) throw error
    throw new DamagedMember(`its packed bytes are damaged (${(error as Error).message})`)
  }
  if (inflate.bytesWritten !== packedSize) throw new DamagedMember('its packed bytes end before they should')
}
