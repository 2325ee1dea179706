import type {FileHandle} from 'node:fs/promises'
import {bytesAt} from './bytes-at.ts'
import {UntrustedZip} from './untrusted-zip.ts'
import {zip64, zip64Unstated} from './zip64.ts'

/** What the directory of a zip says of a file, as far as the header before the file says it again. */
export interface StatedMember {
  readonly name: string
  readonly rawName: Buffer
  /** Its line of the directory, from the mark on. */
  readonly line: Buffer
  readonly header: number
  readonly packedSize: number
  readonly size: number
}

const localMark = 0x0403_4b50
const descriptorMark = 0x0807_4b50
const localLength = 30

/** Fields of the header before a file, by their place, and the same ones in the directory. */
const repeated = [
  ['the version', 4, 6, 2],
  ['the flags', 6, 8, 2],
  ['the packing', 8, 10, 2],
  ['the time', 10, 12, 4]
] as const

/** The checksum and both sizes, in this order: in the directory, and in the header before the file. */
const measuresInDirectory = 16
const measuresInHeader = 14
const measuresLength = 12
/** The header leaves them to a descriptor behind the file. */
const isStreamed = 8

/**
 * Where the packed bytes of a file begin, and where all that belongs to it ends. Whatever the header before the file
 * and the descriptor behind it say must be what the directory says, so that no two programs can see different files.
 *
 * @throws UntrustedZip where they disagree.
 */
export async function zipLocalHeader(
  handle: FileHandle,
  {name, rawName, line, header, packedSize, size}: StatedMember
): Promise<{readonly start: number; readonly end: number}> {
  const local = await bytesAt(handle, header, localLength).catch(() => undefined)
  if (local === undefined || local.readUInt32LE(0) !== localMark)
    throw new UntrustedZip(`the header before ${name} is missing`)
  const localName = await bytesAt(handle, header + localLength, local.readUInt16LE(26))
  if (!localName.equals(rawName)) throw new UntrustedZip(`the header before ${name} is that of another file`)
  const differing = repeated.find(
    ([, here, there, length]) => local.compare(line, there, there + length, here, here + length) !== 0
  )
  if (differing !== undefined)
    throw new UntrustedZip(`${differing[0]} of ${name} is not the same in the header before it`)
  const start = header + localLength + localName.length + local.readUInt16LE(28)
  const measures = line.subarray(measuresInDirectory, measuresInDirectory + measuresLength)
  const own = local.subarray(measuresInHeader, measuresInHeader + measuresLength)
  const isLeftOut = (local.readUInt16LE(6) & isStreamed) !== 0
  if (own.readUInt32LE(4) === zip64Unstated || own.readUInt32LE(8) === zip64Unstated) throw zip64()
  const isEmpty = own.every((byte) => byte === 0)
  if (!(own.equals(measures) || (isLeftOut && isEmpty)))
    throw new UntrustedZip(`the checksum or the size of ${name} is not the same in the header before it`)
  const packedEnd = start + packedSize
  if (!isLeftOut) return {start, end: packedEnd}
  const behind = await bytesAt(handle, packedEnd, 4 + measuresLength).catch(() => undefined)
  const isMarked = behind !== undefined && behind.readUInt32LE(0) === descriptorMark
  const descriptor = behind?.subarray(isMarked ? 4 : 0, (isMarked ? 4 : 0) + measuresLength)
  if (descriptor === undefined || !descriptor.equals(measures))
    throw new UntrustedZip(
      `what stands behind ${name} says another checksum or size than ${size} bytes, as the directory has it`
    )
  return {start, end: packedEnd + (isMarked ? 4 : 0) + measuresLength}
}
