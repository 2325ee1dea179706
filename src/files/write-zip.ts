import {open} from 'node:fs/promises'
import {Zip, ZipDeflate, ZipPassThrough} from 'fflate'
import type {ArchiveEntry, ArchiveStage} from '../model/archive-entry.ts'
import type {FileDigest} from '../model/file-digest.ts'
import {DeflatedAside, WorkingAside} from './deflate-aside.ts'
import {digester} from './digest.ts'
import {DiskTrouble} from './disk-trouble.ts'

export interface WrittenZip {
  /** Every file of the zip, in the order of writing; paths without the top folder. */
  readonly files: readonly FileDigest[]
  readonly zip: FileDigest
}

/** Compressed as they are: deflating them again costs time and gains nothing. */
const packed = /\.(png|jpe?g|gif|webp|docx|xlsx|odt|pdf|zip|gz)$/i

/** Blocks in which content is hashed and deflated, so that the bytes of the zip do not hang on how a disk reads. */
const blockSize = 256 * 1024

/** Level of the deflating: the usual one. */
const level = 6

/** Files from here on are deflated on another thread. */
const largeSize = 4 * 1024 * 1024

/** The disk is asked to take so many bytes at once. */
const writeSize = 512 * 1024

/**
 * Sizes and offsets of a zip are 32 bits wide, and its files are counted in 16, without extensions that many readers
 * lack; the last count announces such an extension.
 */
const largest = 0xffff_ffff
const mostFiles = 0xfffe

/**
 * Write a zip, hashing every file on its way. The same entries give the same bytes: no clock, zone, umask or
 * machine is in them.
 *
 * @throws DiskTrouble where the zip would become too large for its format.
 */
export async function writeZip(
  target: string,
  top: string,
  stages: readonly ArchiveStage[],
  onFile: (path: string) => void = () => {}
): Promise<WrittenZip> {
  const handle = await open(target, 'wx')
  const whole = digester(target)
  let waiting: Uint8Array[] = []
  let failure: Error | undefined
  const zip = new Zip((error, chunk) => {
    if (error) failure = error
    else waiting.push(chunk)
  })
  const drain = async (least = writeSize): Promise<void> => {
    if (failure) throw failure
    if (waiting.reduce((sum, {length}) => sum + length, 0) < least) return
    const bytes = Buffer.concat(waiting)
    waiting = []
    whole.add(bytes)
    // Unlike write(), until the disk has taken all of them.
    await handle.writeFile(bytes)
  }
  const working = new WorkingAside()
  const files: FileDigest[] = []
  try {
    for (const stage of stages) {
      for (const entry of stage(files)) {
        onFile(entry.path)
        files.push(await writeEntry(zip, top, entry, working, drain))
        if (files.length > mostFiles) throw tooLarge(`more than ${mostFiles} files`)
      }
    }
    await working.settle()
    zip.end()
    await drain(0)
  } finally {
    working.stop()
    await handle.close()
  }
  const digest = whole.done()
  if (digest.bytes > largest) throw tooLarge('more than 4 gigabytes packed')
  return {files, zip: digest}
}

async function writeEntry(
  zip: Zip,
  top: string,
  {path, content}: ArchiveEntry,
  working: WorkingAside,
  drain: () => Promise<void>
): Promise<FileDigest> {
  const name = `${top}/${path}`
  const digest = digester(path)
  const blocks = blocksOf(content)[Symbol.asyncIterator]()
  const first: Uint8Array<ArrayBuffer>[] = []
  let next = await blocks.next()
  // Another thread takes longer to start than a small file to deflate.
  for (; next.done !== true && first.length * blockSize < largeSize; next = await blocks.next())
    first.push(next.value)
  const isLarge = next.done !== true && !packed.test(path)
  const aside = isLarge ? new DeflatedAside(name, level) : undefined
  const file = aside ?? (packed.test(path) ? new ZipPassThrough(name) : new ZipDeflate(name, {level}))
  // Local parts, because a zip holds local time: this is the first day that it can hold, everywhere.
  file.mtime = new Date(1980, 0, 1)
  file.os = 3
  file.attrs = (0o100644 << 16) >>> 0
  zip.add(file)
  if (aside !== undefined) working.add(aside)
  const push = async (block: Uint8Array<ArrayBuffer>): Promise<void> => {
    digest.add(block)
    await working.goAhead(block.length, aside)
    file.push(block)
    await aside?.room()
    await drain()
  }
  for (const block of first) await push(block)
  for (; next.done !== true; next = await blocks.next()) await push(next.value)
  file.push(new Uint8Array(0), true)
  await drain()
  const done = digest.done()
  if (done.bytes > largest) throw tooLarge(`${path} has more than 4 gigabytes`)
  return done
}

/** Content in blocks of one size, the last one aside. */
async function* blocksOf(content: ArchiveEntry['content']): AsyncIterable<Uint8Array<ArrayBuffer>> {
  const chunks = typeof content === 'function' ? content() : [content]
  let block = new Uint8Array(blockSize)
  let filled = 0
  for await (const chunk of chunks) {
    const bytes = typeof chunk === 'string' ? Buffer.from(chunk, 'utf8') : chunk
    for (let start = 0; start < bytes.length; ) {
      const taken = Math.min(blockSize - filled, bytes.length - start)
      block.set(bytes.subarray(start, start + taken), filled)
      filled += taken
      start += taken
      if (filled < blockSize) continue
      yield block
      block = new Uint8Array(blockSize)
      filled = 0
    }
  }
  if (filled > 0) yield block.subarray(0, filled)
}

function tooLarge(what: string): DiskTrouble {
  return new DiskTrouble(
    `the archive is too large for a zip: ${what}`,
    'archive the seasons of this study one by one, or leave large pictures out of the folder'
  )
}
