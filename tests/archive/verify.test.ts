import {createHash} from 'node:crypto'
import {rmSync} from 'node:fs'
import {join} from 'node:path'
import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {judgeBag} from '../../src/archive/judge-bag.ts'
import {build} from '../../src/cli/build.ts'
import {capturedTerminal, run} from '../cli/captured-terminal.ts'
import {everythingIn, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {archivedFiles, packed, textOf, unpackTo} from './archive-on-disk.ts'
import {hashedAgain} from './hashed-again.ts'
import {smallReport, verified} from './small-report.ts'
import {openStudy, privateStudy} from './small-study.ts'

const digestOf = (path: string, bytes: Uint8Array) => ({
  path,
  bytes: bytes.length,
  sha256: createHash('sha256').update(bytes).digest('hex'),
  sha512: createHash('sha512').update(bytes).digest('hex')
})

const isTag = (path: string) => !path.startsWith('data/')

function withByte(bytes: Uint8Array, at: number, value: number): Uint8Array {
  const changed = Uint8Array.from(bytes)
  changed[at] = value
  return changed
}

async function verifyFiles(top: string, files: ReadonlyMap<string, Uint8Array>) {
  const folder = temporaryFolder()
  writeFiles(folder, {'archive.zip': packed(top, files)})
  return verified(join(folder, 'archive.zip'))
}

test('an archive verifies as a zip, unpacked, and unpacked into a folder of its own, and nothing is written', async () => {
  const {files, top, zip} = await archivedFiles(openStudy)
  const folder = temporaryFolder()
  unpackTo(join(folder, 'around', top), files)
  writeFiles(folder, {'archive.zip': zip})
  const before = everythingIn(folder)
  for (const path of ['archive.zip', `around/${top}`, 'around']) {
    const {code, out, err} = await verified(join(folder, path))
    expect({code, err}).toEqual({code: 0, err: ''})
    expect(out).toContain(`${files.size} files, all as their checksums say.`)
    expect(out).toMatch(
      /[\d,]+ numbers computed again from the raw records, all the same \(to 1 part in 1,000,000,000\)/
    )
    expect(out).toMatch(/\d+ files made again, byte for byte the same\./)
    expect(out).toContain('The archive is whole, and its numbers follow from its records.')
  }
  expect(everythingIn(folder)).toEqual(before)
  expect(await verified(join(folder, 'archive.zip'), {quiet: true})).toEqual({code: 0, out: '', err: ''})
})

describe('one byte changed anywhere is found', () => {
  test('in every place of every file beside data/, and the file is named', async () => {
    const {files} = await archivedFiles(openStudy)
    const digests = new Map([...files].map(([path, bytes]) => [path, digestOf(path, bytes)]))
    const tags = new Map(
      [...files]
        .filter(([path]) => isTag(path))
        .map(([path, bytes]) => [path, Buffer.from(bytes).toString('latin1')])
    )
    expect(judgeBag({digests: [...digests.values()], tags, unreadable: new Map()})).toEqual([])
    for (const [path, bytes] of files) {
      if (!isTag(path)) continue
      for (let at = 0; at < bytes.length; at++) {
        for (const value of [bytes[at]! ^ 1, bytes[at]! ^ 0x20, 10, 9]) {
          if (value === bytes[at]) continue
          const changed = withByte(bytes, at, value)
          const problems = judgeBag({
            digests: [...new Map(digests).set(path, digestOf(path, changed)).values()],
            tags: new Map(tags).set(path, Buffer.from(changed).toString('latin1')),
            unreadable: new Map()
          })
          expect(
            problems.map(({file}) => file),
            `${path} at ${at} with ${value}`
          ).toEqual([path])
        }
      }
    }
  }, 120_000)

  test('in any file of a zip or of a folder, by the command itself', async () => {
    const {files, top} = await archivedFiles(openStudy)
    const folder = unpackTo(join(temporaryFolder(), top), files)
    const paths = [...files.keys()].filter((path) => files.get(path)!.length > 0)
    const flips = fc.record({
      path: fc.constantFrom(...paths),
      where: fc.double({min: 0, max: 0.999999, noNaN: true}),
      by: fc.integer({min: 1, max: 255})
    })
    await fc.assert(
      fc.asyncProperty(flips, async ({path, where, by}) => {
        const bytes = files.get(path)!
        const at = Math.floor(where * bytes.length)
        const changed = withByte(bytes, at, bytes[at]! ^ by)
        const zipped = await verifyFiles(top, new Map(files).set(path, changed))
        writeFiles(folder, {[path]: changed})
        const unzipped = await verified(folder)
        writeFiles(folder, {[path]: bytes})
        for (const {code, out, err} of [zipped, unzipped]) {
          expect({code, err}).toEqual({code: 1, err: ''})
          expect(out.replace(/\n {4}/g, ' ')).toContain(`- ${path} `)
          expect(out).toContain('1 of ')
        }
      }),
      {numRuns: 60}
    )
  }, 120_000)
})

test('files that were added or lost are named', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const added = await verifyFiles(
    top,
    new Map(files).set('data/raw/more.csv', Buffer.from('x')).set('note.txt', Buffer.from('y'))
  )
  expect(added.code).toBe(1)
  expect(added.out).toContain('- data/raw/more.csv was added: no manifest lists it')
  expect(added.out).toContain('- note.txt was added: no manifest lists it')
  for (const gone of [
    'data/raw/weather.csv',
    'data/report/results.json',
    'data/raw/catch.csv',
    'data/archive.json',
    'manifest-sha512.txt',
    'bagit.txt',
    'tagmanifest-sha256.txt'
  ]) {
    if (!files.has(gone)) continue
    const rest = new Map(files)
    rest.delete(gone)
    const {code, out} = await verifyFiles(top, rest)
    expect(code, gone).toBe(1)
    expect(out, gone).toContain(`- ${gone} is missing`)
  }
})

test('one count changed: the file is named, and the numbers that moved', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const records = textOf(files, 'data/raw/catch.csv').replace(
    'Carabus problematicus,3,female',
    'Carabus problematicus,4,female'
  )
  const changed = new Map(files).set('data/raw/catch.csv', Buffer.from(records))
  const careless = await verifyFiles(top, changed)
  expect(careless.code).toBe(1)
  expect(careless.out).toContain('- data/raw/catch.csv was changed: its checksum is another')
  expect(careless.out).toMatch(
    /Individuals in the rates, whole study: \d+ in the archive, \d+ computed again/
  )
  expect(careless.out).toContain(
    'The archive is not as it was made, and its numbers do not follow from its records.'
  )
  const careful = await verifyFiles(top, hashedAgain(changed))
  expect(careful.code).toBe(1)
  expect(careful.out).toContain('all as their checksums say')
  expect(careful.out).toMatch(/Individuals in the rates, whole study: \d+ in the archive, \d+ computed again/)
  expect(careful.out).toContain('The archive is whole, but what is in it does not follow from its records.')
})

test('any one count changed, by a forger who mends every checksum: the numbers that moved are named', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const [header = '', ...lines] = textOf(files, 'data/raw/catch.csv').trimEnd().split('\n')
  for (const [row, line] of lines.entries()) {
    const more = line.replace(
      /^([^,]+,[^,]+,[^,]+,)(\d+)/,
      (_, before, count) => `${before}${Number(count) + 1}`
    )
    expect(more).not.toBe(line)
    const records = [header, ...lines.with(row, more)].map((one) => `${one}\n`).join('')
    const forged = hashedAgain(new Map(files).set('data/raw/catch.csv', Buffer.from(records)))
    const {code, out} = await verifyFiles(top, forged)
    expect(code, line).toBe(1)
    const said = out.replace(/\s+/g, ' ')
    expect(said, line).toMatch(/- [^:]*[Ii]ndividuals[^:]*: \d+ in the archive, \d+ computed again/)
    expect(said).toContain('raw/catch.csv is not the original file')
  }
})

test('a number or a document changed by a careful forger is found', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const results = textOf(files, 'data/report/results.json').replace(
    /("label": "Individuals recorded, whole study"[^}]*"value": )(\d+)/,
    '$1999'
  )
  const number = await verifyFiles(
    top,
    hashedAgain(new Map(files).set('data/report/results.json', Buffer.from(results)))
  )
  expect(number.code).toBe(1)
  expect(number.out).toMatch(/Individuals recorded, whole study: 999 in the archive, \d+ computed again/)
  const page = textOf(files, 'data/report/index.html').replace('<p>', '<p>(all true) ')
  const document = await verifyFiles(
    top,
    hashedAgain(new Map(files).set('data/report/index.html', Buffer.from(page)))
  )
  expect(document.code).toBe(1)
  expect(document.out.replace(/\s+/g, ' ')).toMatch(
    /- index\.html differs in line 2: "[^"]*all true[^"]*" there, "[^"]*" made again/
  )
})

test('an archive of another version is compared number by number, and its documents are not', async () => {
  const {files, top} = await archivedFiles(openStudy)
  const older = (path: string) =>
    [path, Buffer.from(textOf(files, path).replace(/"version": "[^"]+"/, '"version": "0.0.9"'))] as const
  const changed = new Map([...files, older('data/archive.json'), older('data/report/provenance.json')])
  const {code, out} = await verifyFiles(top, hashedAgain(changed))
  expect(code).toBe(0)
  expect(out).toContain('made with pitfolio 0.0.9')
  expect(out.replace(/\s+/g, ' ')).toContain(
    'Not made again: documents are compared only by the version that made them, pitfolio 0.0.9.'
  )
})

test('a copy that holds something back is computed again, and every value that cannot be is named', async () => {
  const {files, top} = await archivedFiles(privateStudy)
  const {notRecomputable} = JSON.parse(textOf(files, 'data/archive.json')) as {notRecomputable: string[]}
  const {code, out} = await verifyFiles(top, files)
  expect(code).toBe(0)
  const said = out.replace(/\s+/g, ' ')
  expect(said).toContain(
    `${notRecomputable.length} values cannot be computed again from the copy of the raw files`
  )
  expect(out.split('--| ok |-- held back')[1]!.match(/^ {2}- /gm)).toHaveLength(notRecomputable.length)
  expect(said).toContain('- sites, K1, position, shown: withheld in the report, not recorded from the copy')
  expect(said).toContain('- taxa, Sensitive kind 1: only from the copy')
  expect(said).toContain('- taxa, Carabus intricatus: only in the report')
  const records = textOf(files, 'data/raw/catch.csv').replace(
    'Carabus problematicus,3',
    'Carabus problematicus,5'
  )
  const moved = await verifyFiles(
    top,
    hashedAgain(new Map(files).set('data/raw/catch.csv', Buffer.from(records)))
  )
  expect(moved.code).toBe(1)
  expect(moved.out).toMatch(/Individuals in the rates, whole study: \d+ in the archive/)
})

describe('a report against its study', () => {
  async function reportOf(files: Readonly<Record<string, string>>): Promise<string> {
    const study = join(temporaryFolder(), 'study')
    writeFiles(study, files)
    expect(await build(study, {}, capturedTerminal().terminal, smallReport)).toBe(0)
    return study
  }

  test('is up to date, or out of date by the files that changed, with the numbers that moved', async () => {
    const study = await reportOf(openStudy)
    const report = join(study, 'report')
    for (const options of [
      [undefined, {report}],
      [study, {report}],
      [report, {}],
      [study, {}]
    ] as const) {
      const fresh = await verified(options[0], options[1])
      expect(fresh.code).toBe(0)
      expect(fresh.out).toContain('This report is up to date, and its numbers follow from its records.')
    }
    writeFiles(study, {
      'catch.csv': openStudy['catch.csv']!.replace('problematicus,3', 'problematicus,4'),
      'weather.csv': 'date,rain_mm\n2026-05-04,1\n'
    })
    rmSync(join(study, 'text/introduction.md'))
    const {code, out} = await verified(undefined, {report})
    expect(code).toBe(1)
    expect(out).toContain(
      'This report is out of date: catch.csv changed, text/introduction.md is gone, weather.csv is new.'
    )
    expect(out).toMatch(/Individuals in the rates, whole study: \d+ in the report, \d+ computed again/)
  })

  test('is found edited, with files changed, added and lost, and nothing is written', async () => {
    const study = await reportOf(openStudy)
    writeFiles(study, {'report/index.html': 'mine', 'report/extra.md': 'mine'})
    rmSync(join(study, 'report/figures/effort.svg'))
    const before = everythingIn(study)
    const {code, out} = await verified(undefined, {report: join(study, 'report')})
    expect(code).toBe(1)
    for (const words of [
      'changed: index.html',
      'added: extra.md',
      'missing: figures/effort.svg',
      'This report is not as pitfolio made it.'
    ])
      expect(out).toContain(words)
    expect(everythingIn(study)).toEqual(before)
  })

  test('that pitfolio did not make, or that is not there, ends with 2', async () => {
    const folder = temporaryFolder()
    writeFiles(folder, {'report/provenance.json': '{}'})
    for (const report of ['report', 'nowhere']) {
      const {code, err} = await verified(undefined, {report: join(folder, report)})
      expect(code).toBe(2)
      expect(err).toContain('is not a report that pitfolio made')
    }
    expect(await run(['verify'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('there is nothing named to verify')
    })
  })
})
