import {createHash} from 'node:crypto'
import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {unzipSync} from 'fflate'
import {expect, test} from 'vitest'
import {openZip} from '../../src/files/open-zip.ts'
import {writeZip} from '../../src/files/write-zip.ts'
import {temporaryFolder} from './study-on-disk.ts'

/** Bytes that pack to about a third, the same on every run. */
function sample(length: number): Uint8Array {
  const bytes = new Uint8Array(length)
  for (let at = 0, seed = 1; at < length; at++) {
    seed = (seed * 1_103_515_245 + 12_345) & 0x7fff_ffff
    bytes[at] = 97 + ((seed >> 16) % 9)
  }
  return bytes
}

async function* inPieces(bytes: Uint8Array, size: number): AsyncIterable<Uint8Array> {
  for (let start = 0; start < bytes.length; start += size) yield bytes.subarray(start, start + size)
}

test('a zip holds what was put in, at every size round a block and on another thread, and other readers agree', async () => {
  const sizes = [0, 1, 65_535, 65_536, 65_537, 131_072, 4 * 1024 * 1024, 4 * 1024 * 1024 + 1, 9_000_001]
  const path = join(temporaryFolder(), 'a.zip')
  const entries = sizes.map((size) => ({
    path: `dir/größe ${size}.txt`,
    content: () => inPieces(sample(size), 50_000)
  }))
  const {files, zip} = await writeZip(path, 'top', [
    () => entries,
    (written) => [{path: 'list.json', content: JSON.stringify(written.map(({bytes}) => bytes))}]
  ])
  expect(zip.bytes).toBe(readFileSync(path).length)
  expect(files.map(({bytes}) => bytes).slice(0, -1)).toEqual(sizes)
  const found = unzipSync(readFileSync(path))
  for (const size of sizes)
    expect(Buffer.from(found[`top/dir/größe ${size}.txt`]!).equals(sample(size)), `${size}`).toBe(true)
  expect(Buffer.from(found['top/list.json']!).toString()).toBe(JSON.stringify(sizes))
  const archive = await openZip(path)
  for (const {path: name, sha256} of files) {
    const hash = createHash('sha256')
    for await (const chunk of archive.read(name)) hash.update(chunk)
    expect(hash.digest('hex')).toBe(sha256)
  }
  await archive.close()
})

test('the bytes of a zip do not hang on the pieces in which content comes', async () => {
  const folder = temporaryFolder()
  const bytes = sample(5_000_000)
  const zips: string[] = []
  for (const size of [1_000_000, 65_536, 333]) {
    const path = join(folder, `${size}.zip`)
    const {zip} = await writeZip(path, 'top', [() => [{path: 'x.csv', content: () => inPieces(bytes, size)}]])
    zips.push(zip.sha256)
  }
  expect(new Set(zips).size).toBe(1)
})

test('pictures go in as they are, and the modes of files are those of any other zip', async () => {
  const path = join(temporaryFolder(), 'a.zip')
  await writeZip(path, 'top', [
    () => [
      {path: 'a.png', content: sample(1000)},
      {path: 'b.csv', content: sample(1000)}
    ]
  ])
  const archive = await openZip(path)
  expect([...archive.files].map(([name, {size}]) => [name, size])).toEqual([
    ['a.png', 1000],
    ['b.csv', 1000]
  ])
  await archive.close()
  const bytes = readFileSync(path)
  expect(bytes.includes(Buffer.from(sample(1000)))).toBe(true)
  // The directory's entries: made on Unix, regular files that all may read, on the first day of the format.
  const entry = bytes.indexOf(Buffer.from([0x50, 0x4b, 1, 2]))
  expect(bytes.readUInt8(entry + 5)).toBe(3)
  expect(bytes.readUInt32LE(entry + 38) >>> 16).toBe(0o100644)
  expect(bytes.readUInt32LE(entry + 12)).toBe(((0 << 25) | (1 << 21) | (1 << 16)) >>> 0)
})

test('a source that fails leaves an error and no thread behind', async () => {
  async function* failing(): AsyncIterable<Uint8Array> {
    yield sample(6_000_000)
    throw new Error('the disk is gone')
  }
  const path = join(temporaryFolder(), 'a.zip')
  await expect(writeZip(path, 'top', [() => [{path: 'x.csv', content: failing}]])).rejects.toThrow(
    'the disk is gone'
  )
})
