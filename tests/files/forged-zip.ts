import {deflateRawSync} from 'node:zlib'

/** A zip member as a liar writes it: every field may say something else than the truth. */
export interface ForgedMember {
  readonly name: string | Uint8Array
  readonly content?: Uint8Array | string
  /** Name in the header before the file, where it is another. */
  readonly localName?: string
  readonly statedSize?: number
  readonly statedPackedSize?: number
  readonly method?: number
  readonly flags?: number
  /** Unix mode, such as 0o120777 for a link. */
  readonly mode?: number
  /** Where the directory says that the file begins. */
  readonly offset?: number
  /** Packed bytes instead of those of the content. */
  readonly packed?: Uint8Array
  /** Size, and time, in the header before the file, where they are others. */
  readonly localSize?: number
  readonly localTime?: number
  /** Bytes before the file that belong to none. */
  readonly gap?: Uint8Array | string
  /** What stands behind the file in place of the header's checksum and sizes. */
  readonly descriptor?: readonly [checksum: number, packedSize: number, size: number]
  readonly disk?: number
}

export function forgedZip(
  members: readonly ForgedMember[],
  end: {
    readonly count?: number
    readonly offset?: number
    readonly before?: Uint8Array
    readonly after?: Uint8Array
  } = {}
): Uint8Array {
  const parts: Buffer[] = []
  const directory: Buffer[] = []
  let at = 0
  for (const {
    name,
    content = '',
    localName,
    statedSize,
    statedPackedSize,
    method = 8,
    flags = 0,
    mode = 0o100644,
    offset,
    packed,
    localSize,
    localTime = 0,
    gap = '',
    descriptor,
    disk = 0
  } of members) {
    const filling = Buffer.from(gap as string)
    parts.push(filling)
    at += filling.length
    const bytes = Buffer.from(content as string)
    const data = Buffer.from(packed ?? (method === 8 ? deflateRawSync(bytes) : bytes))
    const rawName = Buffer.from(name as string)
    const headerName = localName === undefined ? rawName : Buffer.from(localName)
    const stated = descriptor === undefined ? flags : flags | 8
    const local = Buffer.alloc(30)
    local.writeUInt32LE(0x04034b50, 0)
    local.writeUInt16LE(stated, 6)
    local.writeUInt16LE(method, 8)
    local.writeUInt16LE(localTime, 10)
    if (descriptor === undefined) {
      local.writeUInt32LE(statedPackedSize ?? data.length, 18)
      local.writeUInt32LE(localSize ?? statedSize ?? bytes.length, 22)
    }
    local.writeUInt16LE(headerName.length, 26)
    const entry = Buffer.alloc(46)
    entry.writeUInt32LE(0x02014b50, 0)
    entry.writeUInt8(3, 5)
    entry.writeUInt16LE(stated, 8)
    entry.writeUInt16LE(method, 10)
    entry.writeUInt32LE(statedPackedSize ?? data.length, 20)
    entry.writeUInt32LE(statedSize ?? bytes.length, 24)
    entry.writeUInt16LE(rawName.length, 28)
    entry.writeUInt16LE(disk, 34)
    entry.writeUInt32LE((mode << 16) >>> 0, 38)
    entry.writeUInt32LE(offset ?? at, 42)
    const behind = Buffer.alloc(descriptor === undefined ? 0 : 16)
    if (descriptor !== undefined)
      for (const [index, value] of [0x08074b50, ...descriptor].entries())
        behind.writeUInt32LE(value, index * 4)
    parts.push(local, headerName, data, behind)
    directory.push(entry, rawName)
    at += local.length + headerName.length + data.length + behind.length
  }
  const list = Buffer.concat(directory)
  const tail = Buffer.alloc(22)
  tail.writeUInt32LE(0x06054b50, 0)
  tail.writeUInt16LE(end.count ?? members.length, 8)
  tail.writeUInt16LE(end.count ?? members.length, 10)
  tail.writeUInt32LE(list.length, 12)
  tail.writeUInt32LE(end.offset ?? at, 16)
  return Buffer.concat([...parts, list, Buffer.from(end.before ?? []), tail, Buffer.from(end.after ?? [])])
}
