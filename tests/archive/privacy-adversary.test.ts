import {join} from 'node:path'
import {describe, expect, test} from 'vitest'
import {holdsPosition, tellsPlace} from '../../src/archive/privacy/held-positions.ts'
import {run} from '../cli/captured-terminal.ts'
import {everythingIn, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {archivedFiles, textOf, unpacked} from './archive-on-disk.ts'
import {archived} from './small-report.ts'
import {openStudy, privateStudy} from './small-study.ts'

const number = (bytes: readonly number[]) => Buffer.from(bytes)

/** A TIFF head with one entry, which points to a directory of positions. */
const tiff = Buffer.concat([
  number([0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1]),
  number([0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 26, 0, 0, 0, 0])
])
const exif = Buffer.concat([Buffer.from('Exif\0\0'), tiff, Buffer.from('51 12 12 9 6 12')])
const segment = (marker: number, content: Buffer) =>
  Buffer.concat([number([0xff, marker, (content.length + 2) >> 8, (content.length + 2) & 255]), content])

/** A JPEG of 4 by 3 that says where it was taken. */
const photo = Buffer.concat([
  number([0xff, 0xd8]),
  segment(0xe1, exif),
  segment(0xc0, number([8, 0, 3, 0, 4, 1, 1, 17, 0])),
  number([0xff, 0xda, 0, 2, 1, 2, 3, 0xff, 0xd9])
])

/** Phones write a second picture, with the same words beside it, behind the end of the first. */
const doublePhoto = Buffer.concat([photo, photo])

/** The words stand in the segment of the colours, which a picture cannot do without. */
const stubbornPhoto = Buffer.concat([
  photo.subarray(0, 2),
  segment(0xe2, Buffer.from('ICC_PROFILE\0 GPSLatitude 51,12.2N')),
  photo.subarray(2)
])

/** Little-endian Exif and XMP tell it as well. */
test('a picture that says where it was taken is told from one that does not', () => {
  const little = number([0x25, 0x88, 4, 0, 1, 0, 0, 0])
  for (const bytes of [photo, doublePhoto, little, Buffer.from('<x exif:GPSLatitude="51,12.2N"/>')])
    expect(holdsPosition(bytes)).toBe(true)
  for (const bytes of [Buffer.from('a'), number([0x88, 0x25, 0, 4]), Buffer.alloc(1000, 0x88)])
    expect(holdsPosition(bytes)).toBe(false)
})

test('what announces a place is found wherever the disk cuts the picture in two', async () => {
  for (let cut = 0; cut <= photo.length; cut += 1)
    expect(await tellsPlace([photo.subarray(0, cut), photo.subarray(cut)]), `cut at ${cut}`).toBe(true)
})

describe('pictures and tracks', () => {
  const shown = {'text/introduction.md': 'As it was.\n\n![a trap](photos/trap.jpg)\n'}
  const small = (coordinates: string) => ({
    'study.yaml': `title: T\nstudy_id: t\nprivacy: {coordinates: ${coordinates}}\nanalysis: {replicates: 10, permutations: 99}\nreport: {text: {introduction: text/introduction.md}}\n`,
    'sites.csv': 'site_id,habitat\nA,x\n',
    'traps.csv': 'trap_id,site_id\nA1,A\n',
    'visits.csv': 'trap_id,opened,collected,sample\nA1,2026-05-04,2026-05-18,sorted\n',
    'catch.csv': 'trap_id,collected,taxon,count\nA1,2026-05-18,Carabus nemoralis,1\n'
  })

  async function whole(files: Readonly<Record<string, string | Uint8Array>>) {
    const folder = temporaryFolder()
    writeFiles(join(folder, 'study'), files)
    const said = await run(['archive', join(folder, 'study'), '--out', join(folder, 'a.zip')])
    return {
      ...said,
      folder,
      files: said.code === 0 ? unpacked(join(folder, 'a.zip')).files : new Map<string, Uint8Array>()
    }
  }

  test('a picture goes in without its place, in raw/ and in the report, and pictures that nobody reads stay out', async () => {
    const {files, code, out} = await whole({
      ...small('0.01'),
      ...shown,
      'photos/trap.jpg': photo,
      'photos/other.jpg': photo
    })
    expect(code).toBe(0)
    expect(files.has('data/raw/photos/other.jpg')).toBe(false)
    expect(holdsPosition(files.get('data/raw/photos/trap.jpg')!)).toBe(false)
    // The pixels are those of the original.
    expect(Buffer.from(files.get('data/raw/photos/trap.jpg')!).subarray(-9)).toEqual(photo.subarray(-9))
    for (const [path, bytes] of files) expect(holdsPosition(bytes), path).toBe(false)
    // In the pages a picture is written as letters.
    const letters = photo.subarray(0, 30).toString('base64')
    const pages = [...files].filter(([path]) => path.endsWith('.html'))
    expect(pages.some(([, bytes]) => Buffer.from(bytes).includes('data:image/jpeg;base64,'))).toBe(true)
    for (const [path, bytes] of pages) expect(Buffer.from(bytes).includes(letters), path).toBe(false)
    expect(out.replace(/\s+/g, ' ')).toContain('stood in photos/other.jpg, photos/trap.jpg')
  }, 60_000)

  test('a second picture behind the first goes out with its place', async () => {
    const {files} = await whole({...small('0.01'), ...shown, 'photos/trap.jpg': doublePhoto})
    expect(holdsPosition(files.get('data/raw/photos/trap.jpg')!)).toBe(false)
  }, 60_000)

  test('where every position may be shown, pictures go in as they are', async () => {
    const {files} = await archivedFiles({...small('exact'), 'photos/trap.jpg': photo})
    expect(files.get('data/raw/photos/trap.jpg')).toEqual(Uint8Array.from(photo))
    expect(JSON.parse(textOf(files, 'data/archive.json'))).toMatchObject({raw: 'exact', heldBack: []})
  })

  test('a place that cannot be taken out of a picture stops the archive', async () => {
    const {code, err, folder} = await whole({...small('0.01'), ...shown, 'photos/trap.jpg': stubbornPhoto})
    expect(code).toBe(2)
    expect(err.replace(/\s+/g, ' ')).toContain('raw/photos/trap.jpg: the place where the picture was taken')
    expect(Object.keys(everythingIn(folder)).some((path) => path.endsWith('.zip'))).toBe(false)
  }, 60_000)

  test('the track of a receiver is left out, and makes a copy of an archive that were none', async () => {
    const {files} = await archivedFiles({...small('0.01'), 'walk.gpx': '<gpx/>'})
    expect(files.has('data/raw/walk.gpx')).toBe(false)
    expect(JSON.parse(textOf(files, 'data/archive.json'))).toMatchObject({
      raw: 'generalised',
      heldBack: ['Files of positions are left out: walk.gpx.'],
      leftOut: [{path: 'walk.gpx'}]
    })
  })
})

test('metres of a grid of the whole country are taken out of the columns for metres paced out at the site', async () => {
  const [header = '', ...rows] = privateStudy['traps.csv']!.trimEnd().split('\n')
  const onGrid = [header, 'W1-1,W1,,,3512345.5,5673001', '"W1-2",W1,,,"3 512 355",5673001', ...rows.slice(2)]
  const {files} = await archivedFiles({...privateStudy, 'traps.csv': `${onGrid.join('\n')}\n`})
  expect(textOf(files, 'data/raw/traps.csv').split('\n').slice(1, 4)).toEqual([
    'W1-1,W1,,,,',
    'W1-2,W1,,,,',
    'M1-1,M1,,,0,0'
  ])
  for (const [path, bytes] of files) expect(Buffer.from(bytes).includes('3512345'), path).toBe(false)
})

describe('what an author wrote stops the archive', () => {
  const utf16 = (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le')
  const cases: Readonly<Record<string, readonly [file: string, content: string | Uint8Array, what: string]>> =
    {
      'a position cut off after three decimals': [
        'text/introduction.md',
        'At 51.317 N, 9.229 E.\n',
        'the position of K1'
      ],
      'a position rounded to three decimals': [
        'text/introduction.md',
        'At 51.318 N, 9.230 E.\n',
        'the position of K1'
      ],
      'a position in a comment of study.yaml': [
        'study.yaml',
        `${privateStudy['study.yaml']}# M1 is at 51,218 and 9,130 or so\n`,
        'the position of M1'
      ],
      'a position in a comment of a table': [
        'traps.csv',
        `# 51.2034 9.1034\n${privateStudy['traps.csv']}`,
        'the position of'
      ],
      'a position in the name of a file that is left out': [
        'photos/51.3178 9.2299.jpg',
        'no picture',
        'the position of K1'
      ],
      'a sensitive kind in the remarks of a visit': [
        'visits.csv',
        privateStudy['visits.csv']!.replace('after the storm', 'carabus intricatus seen'),
        'Carabus intricatus, which is not to be named with a place'
      ],
      'a sensitive kind in a table in UTF-16': [
        'catch.csv',
        utf16(privateStudy['catch.csv']!.replace('"worn, doubtful"', '"not C. intricatus"')),
        'Carabus intricatus, which is not to be named with a place'
      ],
      'a position in a comment of a table in UTF-16, big-endian': [
        'traps.csv',
        utf16(`# 51.2034 9.1034\n${privateStudy['traps.csv']}`).swap16(),
        'the position of'
      ],
      'a sensitive kind, shortened, in the remarks of another row of its trap': [
        'catch.csv',
        privateStudy['catch.csv']!.replace('"worn, doubtful"', '"not C. intricatus"'),
        'Carabus intricatus, which is not to be named with a place'
      ],
      'a sensitive kind in the text of a site': [
        'text/site-W1.md',
        'Here lives Carabus intricatus.\n',
        'Carabus intricatus, which is not to be named with a place'
      ]
    }
  for (const [what, [file, content, leak]] of Object.entries(cases)) {
    test(what, async () => {
      const folder = temporaryFolder()
      writeFiles(join(folder, 'study'), {...privateStudy, [file]: content})
      const {code, err} = await whatever(folder)
      expect(code).toBe(2)
      expect(err.replace(/\s+/g, ' ')).toMatch(new RegExp(`((raw|dwca)/[^:]*|names of files): ${leak}`))
    })
  }
  const whatever = (folder: string) => archived(join(folder, 'study'), {out: join(folder, 'a.zip')})

  test('but not a position that is as rough as may be shown, nor the kind in a text about the season', async () => {
    const texts = {'text/introduction.md': 'Near 51.22 N, 9.13 E. We hoped for Carabus intricatus.\n'}
    const folder = temporaryFolder()
    writeFiles(join(folder, 'study'), {...privateStudy, ...texts})
    const {code, out} = await whatever(folder)
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ')).toContain(
      'text/introduction.md names Carabus intricatus, which is not to be named with a place.'
    )
  })

  test('and not where nothing is held back', async () => {
    const folder = temporaryFolder()
    writeFiles(join(folder, 'study'), {...openStudy, 'text/introduction.md': 'At 51.2034 N, 9.1034 E.\n'})
    expect((await whatever(folder)).code).toBe(0)
  })
})
