import type {FileHandle} from 'node:fs/promises'
import {bytesAt} from './bytes-at.ts'
import {UntrustedZip} from './untrusted-zip.ts'
import {zipLocalHeader} from './zip-local-header.ts'
import {refuseName} from './zip-names.ts'
import {zip64, zip64LocatorLength, zip64LocatorMark, zip64Unstated} from './zip64.ts'

/** One file in a zip, as its directory tells. */
export interface ZipMember {
  readonly name: string
  readonly isDirectory: boolean
  readonly isDeflated: boolean
  readonly packedSize: number
  readonly size: number
  /** Where its local header begins, where its packed bytes do, and where all that belongs to it ends. */
  readonly header: number
  readonly start: number
  readonly end: number
}

const endMark = 0x0605_4b50
const memberMark = 0x0201_4b50
const endLength = 22
const longestComment = 0xffff

/** Bounds on what is believed: far above any archive of pitfolio, far below what would hurt. */
const mostMembers = 0xffff
const largestDirectory = 64 * 1024 * 1024
/** Deflate packs at most about 1,030 to 1; tables of records pack 10 to 40 to 1. */
const believableRatio = 250
const unsuspiciousSize = 16 * 1024 * 1024
const largestTotal = 64 * 1024 * 1024 * 1024

/**
 * The files of a zip, from the directory at its end, checked against the headers before each file, so that no two
 * programs can see different files in it.
 *
 * @throws UntrustedZip for everything that an honest zip does not hold: paths that lead out of it, links, encrypted
 * or doubled files, parts that lie over each other, sizes that no table of records has.
 */
export async function zipDirectory(handle: FileHandle, fileSize: number): Promise<readonly ZipMember[]> {
  const {count, offset, size} = await endOfDirectory(handle, fileSize)
  if (size > largestDirectory) throw new UntrustedZip('its directory is larger than that of any archive')
  const directory = await bytesAt(handle, offset, size)
  const members: ZipMember[] = []
  const names = new Set<string>()
  let at = 0
  let total = 0
  for (let index = 0; index < count; index++) {
    const {member, next} = await readMember(handle, directory, at)
    const key = member.name.normalize('NFC').toLowerCase()
    if (names.has(key)) throw new UntrustedZip(`it holds ${member.name} twice`)
    names.add(key)
    total += member.size
    if (total > largestTotal) throw new UntrustedZip('unpacked it would fill more than 64 gigabytes')
    members.push(member)
    at = next
  }
  if (at !== size) throw new UntrustedZip('its directory does not end where it should')
  refuseGaps(members, offset)
  return members
}

async function endOfDirectory(
  handle: FileHandle,
  fileSize: number
): Promise<{count: number; offset: number; size: number}> {
  const length = Math.min(fileSize, endLength + longestComment)
  const tail = await bytesAt(handle, fileSize - length, length)
  for (let at = tail.length - endLength; at >= 0; at--) {
    if (tail.readUInt32LE(at) !== endMark) continue
    const count = tail.readUInt16LE(at + 10)
    const size = tail.readUInt32LE(at + 12)
    const offset = tail.readUInt32LE(at + 16)
    const start = fileSize - length + at
    if (tail.readUInt16LE(at + 20) !== tail.length - at - endLength) continue
    const locator = at - zip64LocatorLength
    const isLong = locator >= 0 && tail.readUInt32LE(locator) === zip64LocatorMark
    if (isLong || count === mostMembers || offset === zip64Unstated || size === zip64Unstated) throw zip64()
    if (
      tail.readUInt16LE(at + 4) !== 0 ||
      tail.readUInt16LE(at + 6) !== 0 ||
      tail.readUInt16LE(at + 8) !== count
    )
      throw new UntrustedZip('it is one part of several')
    if (offset + size !== start) throw new UntrustedZip('its directory does not stand at its end')
    return {count, offset, size}
  }
  throw new UntrustedZip('it is not a zip, or is cut short: the directory at its end is missing')
}

async function readMember(
  handle: FileHandle,
  directory: Buffer,
  at: number
): Promise<{member: ZipMember; next: number}> {
  if (at + 46 > directory.length || directory.readUInt32LE(at) !== memberMark)
    throw new UntrustedZip('its directory is damaged')
  const [nameLength, extraLength, commentLength] = [28, 30, 32].map((field) =>
    directory.readUInt16LE(at + field)
  )
  const next = at + 46 + nameLength! + extraLength! + commentLength!
  if (next > directory.length) throw new UntrustedZip('its directory is damaged')
  const rawName = directory.subarray(at + 46, at + 46 + nameLength!)
  const {name, isDirectory} = refuseName(rawName)
  const flags = directory.readUInt16LE(at + 8)
  const method = directory.readUInt16LE(at + 10)
  const packedSize = directory.readUInt32LE(at + 20)
  const size = directory.readUInt32LE(at + 24)
  const header = directory.readUInt32LE(at + 42)
  if ([packedSize, size, header].includes(zip64Unstated)) throw zip64()
  if (directory.readUInt16LE(at + 34) !== 0) throw new UntrustedZip('it is one part of several')
  if ((flags & 1) !== 0) throw new UntrustedZip(`${name} is encrypted`)
  if (method !== 0 && method !== 8)
    throw new UntrustedZip(`${name} is packed in a way that pitfolio does not use`)
  if (method === 0 && packedSize !== size) throw new UntrustedZip(`${name} has two sizes`)
  refuseSpecial(name, directory.readUInt8(at + 5), directory.readUInt32LE(at + 38), isDirectory)
  if (size > unsuspiciousSize && size > packedSize * believableRatio)
    throw new UntrustedZip(
      `${name} would unpack to ${Math.round(size / Math.max(1, packedSize))} times its size`
    )
  const line = directory.subarray(at, next)
  const {start, end} = await zipLocalHeader(handle, {name, rawName, line, header, packedSize, size})
  return {member: {name, isDirectory, isDeflated: method === 8, packedSize, size, header, start, end}, next}
}

const typeBits = 0o170000
const regularFile = 0o100000
const folder = 0o040000
const unix = 3

/** Links and devices, by the file type that Unix notes beside the name. */
function refuseSpecial(name: string, madeOn: number, attributes: number, isDirectory: boolean): void {
  const type = (attributes >>> 16) & typeBits
  if (madeOn !== unix || type === 0 || type === (isDirectory ? folder : regularFile)) return
  throw new UntrustedZip(type === 0o120000 ? `${name} is a link` : `${name} is neither a file nor a folder`)
}

/** Parts that lie over each other let a few bytes unpack to any size; parts between files can hide anything. */
function refuseGaps(members: readonly ZipMember[], directoryStart: number): void {
  let reached = 0
  for (const {name, header, end} of [...members].sort((a, b) => a.header - b.header)) {
    if (header < reached) throw new UntrustedZip(`${name} lies over another file`)
    if (header > reached) throw new UntrustedZip(`there are bytes before ${name} that belong to no file`)
    reached = end
  }
  if (reached > directoryStart) throw new UntrustedZip('its last file reaches into the directory')
  if (reached < directoryStart)
    throw new UntrustedZip('there are bytes before the directory that belong to no file')
}
