import {execFileSync} from 'node:child_process'
import {mkdirSync, readdirSync, symlinkSync} from 'node:fs'
import {tmpdir} from 'node:os'
import {join} from 'node:path'
import {deflateRawSync} from 'node:zlib'
import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {type ForgedMember, forgedZip} from '../files/forged-zip.ts'
import {everythingIn, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {archivedFiles, packed, unpackTo} from './archive-on-disk.ts'
import {hashedAgain} from './hashed-again.ts'
import {verified} from './small-report.ts'
import {openStudy} from './small-study.ts'

const bag = {name: 'top/bagit.txt', content: 'BagIt-Version: 1.0\n'}

/** Verify a file: what is said, and proof that nothing was written anywhere it could have been. */
async function refusal(zip: Uint8Array) {
  const folder = temporaryFolder()
  writeFiles(folder, {'in/a.zip': zip})
  const before = everythingIn(folder)
  const others = new Set(readdirSync(tmpdir()))
  const result = await verified(join(folder, 'in/a.zip'))
  expect(everythingIn(folder)).toEqual(before)
  expect(
    readdirSync(tmpdir()).filter(
      (name) => !others.has(name) && name.startsWith('pitfolio') && !name.startsWith('pitfolio-test-')
    )
  ).toEqual([])
  return result
}

const packedZeros = (megabytes: number) => deflateRawSync(Buffer.alloc(megabytes * 1024 * 1024), {level: 9})

describe('a zip that is no honest archive is refused with the reason', () => {
  const cases: Readonly<Record<string, readonly [zip: () => Uint8Array, reason: string]>> = {
    'a path that climbs out': [
      () => forgedZip([bag, {name: 'top/../../evil.txt'}]),
      'leads out of the archive'
    ],
    'a path that climbs out with backslashes': [
      () => forgedZip([bag, {name: 'top\\..\\..\\evil.txt'}]),
      'it holds a file named'
    ],
    'an absolute path': [() => forgedZip([bag, {name: '/etc/evil'}]), 'a place of its own choosing'],
    'a path with a drive': [() => forgedZip([bag, {name: 'C:/evil'}]), 'a place of its own choosing'],
    'an empty part of a path': [() => forgedZip([bag, {name: 'top//evil'}]), 'it holds a file named'],
    'a control character in a name': [
      () => forgedZip([bag, {name: 'top/a\u0007b'}]),
      'it holds a file named'
    ],
    'a name that is no UTF-8': [
      () => forgedZip([bag, {name: Uint8Array.from([0x74, 0x6f, 0x70, 0x2f, 0xff])}]),
      'not UTF-8'
    ],
    'a link': [
      () => forgedZip([bag, {name: 'top/data', content: '/etc', mode: 0o120777}]),
      'top/data is a link'
    ],
    'a device': [() => forgedZip([bag, {name: 'top/dev', mode: 0o020666}]), 'neither a file nor a folder'],
    'an encrypted file': [() => forgedZip([bag, {name: 'top/x', flags: 1}]), 'encrypted'],
    'an unknown packing': [() => forgedZip([bag, {name: 'top/x', method: 12}]), 'does not use'],
    'two files of one name': [
      () => forgedZip([bag, {name: 'top/x', content: 'a'}, {name: 'top/x', content: 'b'}]),
      'twice'
    ],
    'two files of one name but for capitals': [
      () => forgedZip([bag, {name: 'top/x'}, {name: 'top/X'}]),
      'twice'
    ],
    'another name in the header before the file': [
      () => forgedZip([bag, {name: 'top/x', localName: 'top/y'}]),
      'that of another file'
    ],
    'two files in the same bytes': [
      () =>
        forgedZip([
          bag,
          {name: 'top/x', content: 'abc'},
          {name: 'top/y', localName: 'top/x', content: 'abc', offset: 0}
        ]),
      'that of another file'
    ],
    'a file that lies over another': [overlapping, 'lies over another file'],
    'a file that reaches into the directory': [
      () => forgedZip([bag, {name: 'top/x', statedPackedSize: 4000}]),
      'reaches into the directory'
    ],
    'a bomb that says what it is': [
      () => forgedZip([bag, {name: 'top/data/x', packed: packedZeros(64), statedSize: 64 * 1024 * 1024}]),
      'times its size'
    ],
    'several folders at the top': [() => forgedZip([bag, {name: 'other/x'}]), 'one folder at its top'],
    'a file at the top': [() => forgedZip([{name: 'bagit.txt'}]), 'one folder at its top'],
    'more files than are there': [() => forgedZip([bag], {count: 3}), 'directory is damaged'],
    'fewer files than are there': [
      () => forgedZip([bag, {name: 'top/x'}], {count: 1}),
      'does not end where it should'
    ],
    'a directory elsewhere': [() => forgedZip([bag], {offset: 0}), 'does not stand at its end'],
    'a tail behind the end': [() => forgedZip([bag], {after: Buffer.from('more')}), 'cut short'],
    'another size in the header before the file': [
      () => forgedZip([bag, {name: 'top/x', content: 'abc', localSize: 4}]),
      'the checksum or the size of top/x is not the same in the header before it'
    ],
    'another time in the header before the file': [
      () => forgedZip([bag, {name: 'top/x', content: 'abc', localTime: 4}]),
      'the time of top/x is not the same in the header before it'
    ],
    'another size behind the file': [
      () => forgedZip([bag, {name: 'top/x', content: 'abc', descriptor: [0, 5, 4]}]),
      'what stands behind top/x says another checksum or size than 3 bytes'
    ],
    'bytes between two files': [
      () => forgedZip([bag, {name: 'top/x', content: 'abc', gap: 'hidden'}]),
      'there are bytes before top/x that belong to no file'
    ],
    'a program before the first file': [
      () => forgedZip([{...bag, gap: '#!/bin/sh\n'}]),
      'there are bytes before top/bagit.txt that belong to no file'
    ],
    'a file on another disk': [() => forgedZip([bag, {name: 'top/x', disk: 1}]), 'one part of several'],
    'the Zip64 form, told by its locator': [
      () => forgedZip([bag], {before: zip64Locator()}),
      'in the Zip64 form'
    ],
    'the Zip64 form, told by sizes that are left out': [
      () => forgedZip([bag, {name: 'top/x', statedSize: 0xffff_ffff, statedPackedSize: 0xffff_ffff}]),
      'in the Zip64 form'
    ],
    'the Zip64 form, told by the header before the file': [
      () => forgedZip([bag, {name: 'top/x', localSize: 0xffff_ffff}]),
      'in the Zip64 form'
    ],
    'the Zip64 form, told by the count of files': [
      () => forgedZip([bag], {count: 0xffff}),
      'in the Zip64 form'
    ],
    'no zip at all': [() => Buffer.from('a letter\n'.repeat(20)), 'it is not a zip, or is cut short'],
    nothing: [() => new Uint8Array(), 'it is not a zip, or is cut short']
  }
  for (const [what, [zip, reason]] of Object.entries(cases)) {
    test(what, async () => {
      const {code, out, err} = await refusal(zip())
      expect({code, out}).toEqual({code: 2, out: ''})
      expect(err).toContain('the archive is refused: ')
      expect(err).toContain(reason)
      expect(err).toMatch(/nothing of (this one|it) was unpacked$/)
    })
  }

  function zip64Locator(): Buffer {
    const locator = Buffer.alloc(20)
    locator.writeUInt32LE(0x07064b50, 0)
    return locator
  }

  function overlapping(): Uint8Array {
    // The second file's header stands inside the first one's bytes.
    const inner = Buffer.from(forgedZip([{name: 'top/y', content: 'b', method: 0}])).subarray(0, 36)
    const outer: ForgedMember = {name: 'top/x', content: inner, method: 0}
    const first = 30 + bag.name.length + deflateRawSync(bag.content).length
    return forgedZip([
      bag,
      outer,
      {name: 'top/y', content: 'b', method: 0, offset: first + 30 + 'top/x'.length}
    ])
  }
})

test('a file that unpacks to more, or to less, than the zip says is named, and unpacking stops there', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const members = [...files].map(([path, content]): ForgedMember => ({name: `${top}/${path}`, content}))
  const zeros = packedZeros(64)
  for (const [statedSize, words] of [
    [1000, 'unpacks to more'],
    [70 * 1024, 'unpacks to less']
  ] as const) {
    const content = statedSize === 1000 ? zeros : deflateRawSync(Buffer.alloc(100))
    const forged = members.map((member) =>
      member.name === `${top}/data/raw/catch.csv` ? {...member, packed: content, statedSize} : member
    )
    const {code, out} = await refusal(forgedZip(forged))
    expect(code).toBe(1)
    expect(out).toContain(`- data/raw/catch.csv cannot be read: it ${words} than the zip says`)
  }
})

test('an archive cut short anywhere is refused', async () => {
  const {zip} = await archivedFiles(openStudy)
  await fc.assert(
    fc.asyncProperty(fc.integer({min: 0, max: zip.length - 1}), async (length) => {
      const {code, out, err} = await refusal(zip.slice(0, length))
      expect({code, out}).toEqual({code: 2, out: ''})
      expect(err).toContain('cut short')
    }),
    {numRuns: 25}
  )
})

test('bytes that mean nothing never bring the command down', async () => {
  const {zip} = await archivedFiles(openStudy)
  const directory = zip.length - 4000
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.integer({min: directory, max: zip.length - 1}), fc.integer({min: 0, max: 255})), {
        minLength: 1,
        maxLength: 12
      }),
      async (changes) => {
        const damaged = Uint8Array.from(zip)
        for (const [at, value] of changes) damaged[at] = value
        const {code, err} = await refusal(damaged)
        expect([0, 1, 2]).toContain(code)
        if (code === 2) expect(err).toMatch(/the archive is refused|is not an archive of pitfolio/)
      }
    ),
    {numRuns: 60}
  )
}, 120_000)

test('an honest bomb with true checksums is refused, and a large honest file keeps memory bounded', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const folder = temporaryFolder()
  const big = Buffer.alloc(300 * 1024 * 1024)
  // Lines that pack about 100 to 1: suspicious to the eye, and still believable.
  const line = Buffer.from(`${'x'.repeat(20)},${'0123456789'.repeat(10)}\n`)
  for (let at = 0, number = 0; at < big.length; at += line.length, number++) {
    line.write(String(number).padStart(20, '0'), 0)
    line.copy(big, at)
  }
  const forged = hashedAgain(new Map(files).set('data/raw/photos/big.txt', big))
  writeFiles(folder, {'a.zip': packed(top, forged)})
  const script = new URL('verify-elsewhere.ts', import.meta.url).pathname
  const said = execFileSync(process.execPath, [
    '--import',
    'tsx',
    '--max-old-space-size=400',
    script,
    join(folder, 'a.zip')
  ]).toString()
  const {code, peakMegabytes} = JSON.parse(said) as {code: number; peakMegabytes: number}
  expect(code).toBe(0)
  expect(peakMegabytes).toBeLessThan(420)
  const zeros = new Map(files).set('data/raw/photos/big.txt', Buffer.alloc(100 * 1024 * 1024))
  const {code: refused, err} = await refusal(packed(top, hashedAgain(zeros)))
  expect(refused).toBe(2)
  expect(err).toContain('times its size')
}, 120_000)

test('more records than memory holds are refused before they fill it', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const folder = temporaryFolder()
  const rows = Array.from({length: 100_000}, (_, row) => `W1-1,2026-05-18,Kind ${row},1,,,,,,,,,\n`).join('')
  const forged = hashedAgain(
    new Map(files).set(
      'data/raw/catch.csv',
      Buffer.from(`${openStudy['catch.csv']!.split('\n')[0]}\n${rows.repeat(12)}`)
    )
  )
  writeFiles(folder, {'a.zip': packed(top, forged)})
  const script = new URL('verify-elsewhere.ts', import.meta.url).pathname
  const said = execFileSync(process.execPath, [
    '--import',
    'tsx',
    '--max-old-space-size=300',
    script,
    join(folder, 'a.zip')
  ]).toString()
  expect(JSON.parse(said)).toMatchObject({
    code: 2,
    err: expect.stringContaining('the raw records are more than the memory of this process holds')
  })
}, 60_000)

test('an unpacked archive with a link in it is refused, and the link is not followed', async () => {
  const {files} = await archivedFiles(openStudy)
  const folder = temporaryFolder()
  const archive = unpackTo(join(folder, 'archive'), files)
  writeFiles(folder, {'secret.csv': 'trap_id\n'})
  symlinkSync(join(folder, 'secret.csv'), join(archive, 'data/raw/extra.csv'))
  const {code, err} = await verified(archive)
  expect(code).toBe(2)
  expect(err).toContain('data/raw/extra.csv is a link')
})

test('what is no archive is said to be none', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {'empty/x': 'y', 'a.zip': forgedZip([{name: 'top/x', content: 'y'}])})
  mkdirSync(join(folder, 'nothing'))
  for (const path of ['empty', 'a.zip', 'nothing']) {
    const {code, err} = await verified(join(folder, path))
    expect(code).toBe(2)
    expect(err).toContain('is not an archive of pitfolio: it holds neither bagit.txt nor data/archive.json')
  }
  expect(await verified(join(folder, 'nowhere'))).toMatchObject({
    code: 2,
    err: expect.stringContaining('is not there')
  })
})
