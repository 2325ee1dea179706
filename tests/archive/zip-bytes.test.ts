import {writeFileSync} from 'node:fs'
import {join} from 'node:path'
import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {judgeBag} from '../../src/archive/judge-bag.ts'
import {digestOf} from '../../src/files/digest.ts'
import {openArchive} from '../../src/files/open-archive.ts'
import {readWhole} from '../../src/files/read-whole.ts'
import {temporaryFolder} from '../files/study-on-disk.ts'
import {archivedFiles} from './archive-on-disk.ts'
import {verified} from './small-report.ts'
import {openStudy} from './small-study.ts'

interface Part {
  readonly from: number
  readonly to: number
  readonly kind: 'header' | 'packed' | 'descriptor' | 'directory' | 'end'
  /** The file it belongs to. */
  readonly name: string
}

/** The parts of a zip as APPNOTE.TXT 6.3.10 lays them out, found by a second reading that shares nothing with ours. */
function partsOf(zip: Buffer): readonly Part[] {
  const parts: Part[] = []
  const end = zip.length - 22
  let at = zip.readUInt32LE(end + 16)
  for (; at < end; at = parts.at(-1)!.to) {
    const length = zip.readUInt16LE(at + 28)
    const name = zip.toString('utf8', at + 46, at + 46 + length)
    const header = zip.readUInt32LE(at + 42)
    const start = header + 30 + zip.readUInt16LE(header + 26) + zip.readUInt16LE(header + 28)
    const packedEnd = start + zip.readUInt32LE(at + 20)
    parts.push({from: header, to: start, kind: 'header', name})
    parts.push({from: start, to: packedEnd, kind: 'packed', name})
    if ((zip.readUInt16LE(header + 6) & 8) !== 0)
      parts.push({from: packedEnd, to: packedEnd + 16, kind: 'descriptor', name})
    const lineEnd = at + 46 + length + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32)
    parts.push({from: at, to: lineEnd, kind: 'directory', name})
  }
  parts.push({from: end, to: zip.length, kind: 'end', name: ''})
  return parts
}

/**
 * Bytes that say nothing of what the zip holds and stand in it once: which program and system made it, whether it took
 * a file for text, and the rights of a file.
 */
function saysNothing({kind, from}: Part, at: number): boolean {
  return kind === 'directory' && [4, 5, 36, 37, 38, 39, 40, 41].includes(at - from)
}

/** What reading every file says against a zip: the files it blames, or why it refuses the whole. */
async function against(path: string): Promise<string> {
  try {
    const archive = await openArchive(path)
    try {
      const digests = []
      const unreadable = new Map<string, string>()
      const tags = new Map<string, string>()
      for (const file of archive.files.keys()) {
        try {
          digests.push(await digestOf(file, archive.read(file)))
          if (!file.startsWith('data/')) tags.set(file, (await readWhole(archive, file)).toString('latin1'))
        } catch (error) {
          unreadable.set(file, (error as Error).message)
        }
      }
      return judgeBag({digests, tags, unreadable})
        .map(({file, message}) => `${archive.top}/${file} ${message}`)
        .join('\n')
    } finally {
      await archive.close()
    }
  } catch (error) {
    return (error as Error).message
  }
}

describe('one byte of a zip changed', () => {
  test('anywhere outside the packed bytes is found, but for bytes that say nothing of what it holds', async () => {
    const zip = Buffer.from((await archivedFiles(openStudy)).zip)
    const parts = partsOf(zip)
    // Every byte of the zip belongs to one of the parts.
    expect(parts.reduce((sum, {from, to}) => sum + to - from, 0)).toBe(zip.length)
    const file = join(temporaryFolder(), 'a.zip')
    writeFileSync(file, zip)
    expect(await against(file)).toBe('')
    for (const part of parts.filter(({kind}) => kind !== 'packed')) {
      for (let at = part.from; at < part.to; at++) {
        if (saysNothing(part, at)) continue
        const changed = Buffer.from(zip)
        changed[at] = changed[at]! ^ (at % 2 === 0 ? 1 : 0x80)
        writeFileSync(file, changed)
        const said = await against(file)
        expect(said, `${part.kind} of ${part.name} at ${at - part.from}`).not.toBe('')
        // What a header or a descriptor says of sizes, times and checksums is blamed on its file.
        const isNumber = part.kind === 'descriptor' || (part.kind === 'header' && at - part.from < 26)
        if (isNumber && at - part.from >= 4) expect(said).toContain(part.name)
      }
    }
  }, 300_000)

  test('among the packed bytes names the file, by the command itself', async () => {
    const {zip: bytes} = await archivedFiles(openStudy)
    const zip = Buffer.from(bytes)
    const packed = partsOf(zip).filter(({kind, from, to}) => kind === 'packed' && to > from)
    const file = join(temporaryFolder(), 'a.zip')
    const flips = fc.record({
      part: fc.constantFrom(...packed),
      where: fc.double({min: 0, max: 0.999999, noNaN: true}),
      by: fc.integer({min: 1, max: 255})
    })
    await fc.assert(
      fc.asyncProperty(flips, async ({part: {from, to, name}, where, by}) => {
        // The last byte of a packed file may hold bits that mean nothing; they fill it up.
        const at = from + Math.floor(where * Math.max(1, to - from - 1))
        const changed = Buffer.from(zip)
        changed[at] = changed[at]! ^ by
        writeFileSync(file, changed)
        const {code, out} = await verified(file)
        expect(code).toBe(1)
        expect(out.replace(/\n {4}/g, ' ')).toContain(`- ${name.slice(name.indexOf('/') + 1)} `)
      }),
      {numRuns: 60}
    )
  }, 120_000)
})
