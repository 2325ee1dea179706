import {createHash} from 'node:crypto'
import {join} from 'node:path'
import iconv from 'iconv-lite'
import {describe, expect, test} from 'vitest'
import {roundingUncertainty} from '../../src/archive/privacy/rounding-uncertainty.ts'
import {everythingIn, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {type ArchivedFiles, archivedFiles, textOf} from './archive-on-disk.ts'
import {rowsOf} from './check-darwin-core.ts'
import {archived, verified} from './small-report.ts'
import {openStudy, privateStudy} from './small-study.ts'

const copyOf = async (study: Readonly<Record<string, string | Uint8Array>>) =>
  (await archivedFiles(study)).files

/** Files outside raw/ where `exact` is in there, all files elsewhere, that hold a text. */
function holding({files}: Pick<ArchivedFiles, 'files'>, ...parts: readonly string[]): readonly string[] {
  return [...files].flatMap(([path, bytes]) =>
    parts.every((part) => Buffer.from(bytes).includes(part)) ? [path] : []
  )
}

test('the uncertainty that rounding adds is that of the published table', () => {
  // Chapman & Wieczorek 2020, Georeferencing Best Practices, doi 10.15468/doc-gg7h-s853, table 3.
  const published = [
    [0.1, 0, 15_691],
    [0.1, 30, 14_697],
    [0.1, 60, 12_461],
    [0.1, 85, 11_211],
    [0.01, 0, 1_570],
    [0.01, 30, 1_470],
    [0.01, 60, 1_246],
    [0.01, 85, 1_121],
    [0.001, 0, 157],
    [0.001, 30, 147],
    [0.001, 60, 125],
    [0.001, 85, 112]
  ] as const
  for (const [precision, latitude, metres] of published)
    expect(Math.abs(roundingUncertainty(latitude, precision) - metres)).toBeLessThanOrEqual(1)
})

test('no file of the archive holds an exact position, a place or an address that is held back', async () => {
  const archive = await archivedFiles(privateStudy)
  expect(holding(archive, '51.2034', '9.1034')).toEqual([])
  expect(holding(archive, '51.2178', '9.1299')).toEqual([])
  for (const secret of [
    '51.3178',
    '9.2299',
    '51.20341',
    '51.31781',
    'Geheim',
    // The nearest named place of the site where the sensitive beetle was caught.
    'Nordheim',
    '32UND',
    'jan@example.net',
    'field book',
    'under the old oak',
    'TP-9'
  ])
    expect(holding(archive, secret), secret).toEqual(
      secret === 'field book' ? ['data/README.md', 'data/archive.json'] : []
    )
  expect(holding(archive, 'ada@example.org').length).toBeGreaterThan(0)
})

test('positions are rounded as study, site and sensitivity ask, with the uncertainty enlarged, and every row says so', async () => {
  const events = new Map(
    rowsOf(await copyOf(privateStudy), 'data/dwca/event.csv').map((row) => [row.eventID!, row])
  )
  // A beetle of category 2 was caught in the wood.
  const rounding = roundingUncertainty(51.2, 0.1)
  for (const id of ['site:W1', 'trap:W1-1', 'trap:W1-2', 'visit:W1-1:2026-05-18'])
    expect(events.get(`two-places-2026:${id}`)).toMatchObject({
      decimalLatitude: '51.2',
      decimalLongitude: '9.1',
      coordinatePrecision: '0.1',
      coordinateUncertaintyInMeters: `${20 + rounding}`,
      dataGeneralizations:
        'coordinates rounded to 0.1 degrees, because kinds that need protection were recorded there; the uncertainty was enlarged accordingly',
      locality: '',
      informationWithheld:
        'the coordinates are known more exactly; the locality is withheld; ask Ada Ash, ada@example.org',
      georeferenceRemarks: ''
    })
  expect(events.get('two-places-2026:site:M1')).toMatchObject({
    decimalLatitude: '51.22',
    decimalLongitude: '9.13',
    coordinatePrecision: '0.01',
    coordinateUncertaintyInMeters: `${30 + roundingUncertainty(51.22, 0.01)}`,
    georeferenceRemarks: expect.stringContaining('no uncertainty is on record; 30 m')
  })
  for (const id of ['site:K1', 'trap:K1-1', 'visit:K1-1:2026-05-18'])
    expect(events.get(`two-places-2026:${id}`)).toMatchObject({
      decimalLatitude: '',
      decimalLongitude: '',
      locality: '',
      coordinateUncertaintyInMeters: '',
      informationWithheld: expect.stringContaining(
        'the coordinates are withheld, because it was decided so for this site; the locality is withheld'
      )
    })
})

test('a kind of category 1 or 2 stands with the season as a whole, and no trap is said to have been without it', async () => {
  const files = await copyOf(privateStudy)
  const found = rowsOf(files, 'data/dwca/occurrence.csv').filter(
    (row) => row.scientificName === 'Carabus intricatus'
  )
  expect(found).toMatchObject([
    {
      eventID: 'two-places-2026',
      individualCount: '2',
      sex: 'female',
      recordedBy: '',
      catalogNumber: '',
      informationWithheld: 'site, trap and day of a sensitive kind; ask Ada Ash, ada@example.org'
    }
  ])
  const scopes = rowsOf(files, 'data/dwca/humboldt.csv')
  for (const row of scopes)
    expect(row.excludedTaxonomicScope).toBe(row.eventID === 'two-places-2026' ? '' : 'Carabus intricatus')
})

test('a trap that caught nothing but a kind held back is not recorded as empty', async () => {
  const alone = {
    ...privateStudy,
    'catch.csv':
      'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus intricatus,1\nM1-1,2026-06-01,Pardosa amentata,1\nK1-1,2026-05-18,Pardosa amentata,1\nW1-2,2026-05-18,Pardosa amentata,1\n'
  }
  const absent = rowsOf(await copyOf(alone), 'data/dwca/occurrence.csv').filter(
    (row) => row.occurrenceStatus === 'absent'
  )
  expect(new Set(absent.map((row) => row.eventID))).toEqual(
    new Set(['two-places-2026:visit:M1-1:2026-05-18', 'two-places-2026:visit:M1-2:2026-05-18'])
  )
})

test('the copy of the raw files counts what it does not name, and says what it is', async () => {
  const {files, out} = await archivedFiles(privateStudy)
  const raw = (name: string) => textOf(files, `data/raw/${name}`)
  expect(raw('sites.csv').split('\n')).toEqual([
    'site_id,habitat,site_name,country,region,locality,latitude,longitude,coordinate_uncertainty_m,coordinates_shown,grid_ref,remarks',
    `W1,wood,North Wood,DE,Hesse,,51.2,9.1,${20 + roundingUncertainty(51.2, 0.1)},,,"steep, wet"`,
    'M1,meadow,Long Meadow,DE,Hesse,Südheim,51.22,9.13,,,,',
    'K1,meadow,Kept Back,DE,Hesse,,,,,none,,',
    ''
  ])
  expect(raw('traps.csv')).toContain('W1-1,W1,51.2,9.1,0,0\n')
  expect(raw('traps.csv')).toContain('K1-1,K1,,,0,0\n')
  // The spelling differed from taxa.csv, and it still does: the check says the same of both.
  expect(raw('catch.csv')).toContain('W1-1,2026-05-18,sensitive kind 1,2,female,')
  expect(raw('taxa.csv')).toContain('Sensitive kind 1,species,Insecta,Coleoptera,Carabidae,,,2,\n')
  expect(raw('study.yaml')).toContain('role: fieldwork, email: withheld}')
  expect(raw('visits.csv')).toBe(privateStudy['visits.csv'])
  const stated = JSON.parse(textOf(files, 'data/archive.json')) as {
    raw: string
    originals: {path: string; sha256: string}[]
    leftOut: {path: string}[]
    notRecomputable: string[]
  }
  expect(stated.raw).toBe('generalised')
  expect(stated.leftOut.map(({path}) => path)).toEqual(['photos/field book.txt'])
  for (const {path, sha256} of stated.originals)
    expect(sha256).toBe(createHash('sha256').update(privateStudy[path]!).digest('hex'))
  expect(stated.originals).toHaveLength(Object.keys(privateStudy).length)
  const about = textOf(files, 'data/README.md')
  expect(about).toContain('## What is held back')
  expect(about).toContain('photos/field book.txt: pitfolio does not read it')
  expect(out).toContain('--exact puts the originals in.')
})

test('with --exact the originals go in, everything else stays generalised, and the archive says that it is not for publication', async () => {
  const archive = await archivedFiles(privateStudy, {exact: true})
  for (const [path, content] of Object.entries(privateStudy))
    expect(textOf(archive.files, `data/raw/${path}`)).toBe(content)
  for (const path of holding(archive, '51.2034')) expect(path).toMatch(/^data\/raw\//)
  for (const path of holding(archive, 'jan@example.net')) expect(path).toMatch(/^data\/raw\//)
  expect(textOf(archive.files, 'data/README.md')).toContain('## Not for publication')
  expect(archive.out).toContain('not for publication')
  const folder = temporaryFolder()
  writeFiles(folder, {'a.zip': archive.zip})
  const {code, out} = await verified(join(folder, 'a.zip'))
  expect(code).toBe(0)
  expect(out).toContain('is not for publication')
  expect(out).toContain('made again, byte for byte the same')
})

describe('a text that gives away what is held back stops the archive', () => {
  const cases = {
    'a position in a text': {'text/introduction.md': 'We met at 51.3178 N, 9.2299 E.\n'},
    'a position with decimal commas in study.yaml': {
      'study.yaml': `${privateStudy['study.yaml']}thanks: to the owner of 51,3178 9,2299\n`
    },
    'an address in a text': {'text/introduction.md': 'Write to jan@example.net.\n'},
    'a position in a column of remarks': {
      'visits.csv': privateStudy['visits.csv']!.replace('after the storm', 'at 51.2034 9.1034')
    }
  }
  test('a position that study.yaml states for all records', async () => {
    const folder = temporaryFolder()
    const settings = `${privateStudy['study.yaml']}columns: {traps: {latitude: {value: 51.2034}, longitude: {value: 9.1034}}}\n`
    writeFiles(join(folder, 'study'), {...privateStudy, 'study.yaml': settings})
    const {code, err} = await archived(join(folder, 'study'), {out: join(folder, 'a.zip')})
    expect(code).toBe(2)
    expect(err).toContain('raw/study.yaml: the position of')
  })
  for (const [what, files] of Object.entries(cases)) {
    test(what, async () => {
      const folder = temporaryFolder()
      writeFiles(join(folder, 'study'), {...privateStudy, ...files})
      const before = everythingIn(folder)
      const {code, err} = await archived(join(folder, 'study'), {out: join(folder, 'a.zip')})
      expect(code).toBe(2)
      expect(err).toContain('would give away what is held back')
      expect(err).toContain(`raw/${Object.keys(files)[0]}`)
      expect(everythingIn(folder)).toEqual(before)
    })
  }
})

describe('a copy is made of tables as people write them', () => {
  const numbersOf = async (study: Readonly<Record<string, string | Uint8Array>>) => {
    const {files} = await archivedFiles(study)
    const stated = JSON.parse(textOf(files, 'data/archive.json')) as {raw: string; notRecomputable: string[]}
    return {files, stated}
  }

  test('with one file for all tables, joined columns, codes, semicolons, decimal commas and Windows-1252', async () => {
    const flat = `Fallen 2026;;;;;;;;;;
plot;cup;habitat;lat;lon;opened;collected;state;species;n;gps
W1;1;wood;51,2034;9,1034;04.05.2026;18.05.2026;ok;Carabus cf. intricatus;2;Größe "x"
W1;1;wood;51,2034;9,1034;04.05.2026;18.05.2026;ok;Pardosa amentata;4;y
M1;1;meadow;51,2178;9,1299;04.05.2026;18.05.2026;ok;Abax ater;1;z
`
    const {files, stated} = await numbersOf({
      'study.yaml': `title: T
dates: dmy
decimal: comma
encoding: windows-1252
privacy: {coordinates: 0.001}
analysis: {replicates: 10, permutations: 99}
files: {sites: all.csv, traps: all.csv, visits: all.csv, catch: all.csv}
columns:
  sites: {site_id: plot, latitude: lat, longitude: lon}
  traps: {trap_id: {join: [plot, cup]}, site_id: plot}
  visits: {trap_id: {join: [plot, cup]}, condition: state}
  catch: {trap_id: {join: [plot, cup]}, taxon: species, count: n}
words: {condition: {ok: intact}}
`,
      'all.csv': iconv.encode(flat, 'windows-1252'),
      'taxa.csv': iconv.encode(
        'taxon,rank,family,sensitive,note\nCarabus intricatus,species,Carabidae,2,groß\nPardosa amentata,species,Lycosidae,,\nAbax ater,species,Carabidae,,\n',
        'windows-1252'
      )
    })
    expect(stated.raw).toBe('generalised')
    expect(
      iconv.decode(Buffer.from(files.get('data/raw/all.csv')!), 'windows-1252')
    ).toBe(`Fallen 2026;;;;;;;;;;
plot;cup;habitat;lat;lon;opened;collected;state;species;n;gps
W1;1;wood;51,2;9,1;04.05.2026;18.05.2026;ok;cf. Sensitive kind 1;2;
W1;1;wood;51,2;9,1;04.05.2026;18.05.2026;ok;Pardosa amentata;4;
M1;1;meadow;51,218;9,130;04.05.2026;18.05.2026;ok;Abax ater;1;
`)
    expect(stated.notRecomputable.filter((pointer) => /^\/(effort|catch|habitats)/.test(pointer))).toEqual([])
    expect(stated.notRecomputable.filter((pointer) => /findings/.test(pointer))).toEqual([])
  })

  test('with the names in the header, in UTF-16', async () => {
    const wide =
      'trap_id;collected;Carabus intricatus;Abax ater;Pardosa amentata\nW1-1;2026-05-18;2;1;0\nW1-2;2026-05-18;0;0;3\nM1-1;2026-06-01;0;1;1\nK1-1;2026-05-18;0;0;1\n'
    const {files, stated} = await numbersOf({
      ...privateStudy,
      'catch.csv': iconv.encode(`\ufeff${wide}`, 'utf-16le')
    })
    expect(iconv.decode(Buffer.from(files.get('data/raw/catch.csv')!), 'utf-16le')).toBe(
      wide.replace('Carabus intricatus', 'Sensitive kind 1')
    )
    expect(stated.notRecomputable.filter((pointer) => /^\/(effort|catch|habitats)/.test(pointer))).toEqual([])
  })

  test('with rows that are set aside: they stay set aside, for the same reasons, and give nothing away', async () => {
    const {files, stated} = await numbersOf({
      ...privateStudy,
      'sites.csv': `${privateStudy['sites.csv']}W1,wood,Twice,DE,Hesse,Nordheim,51.2099,9.1099,5,,,\nX1,wood,"Open,DE,Hesse,Oben,51.2777,9.1777,5,,,\n`,
      'catch.csv': `${privateStudy['catch.csv']}W1-1,2026-05-18,Carabus intricatus,12*,,,,,,,,,\nQ9,2026-05-18,Carabus intricatus,1,,,,,,,,,\n`
    })
    expect(holding({files}, '51.2099')).toEqual([])
    expect(holding({files}, '51.2777')).toEqual([])
    expect(holding({files}, 'Carabus intricatus').filter((path) => path.startsWith('data/raw/'))).toEqual([])
    expect(textOf(files, 'data/raw/catch.csv')).toContain('Sensitive kind 1,12*')
    expect(stated.notRecomputable.filter((pointer) => pointer.startsWith('/records/tables'))).toEqual([])
  })
})

test('positions that could not be used are held back all the same, and an open study stays open for all its slips', async () => {
  const disagreeing = {
    ...privateStudy,
    'sites.csv': privateStudy['sites.csv']!.replace('51.2178,9.1299', 'N51 13.068,9.1299')
  }
  const {files} = await archivedFiles(disagreeing)
  expect(textOf(files, 'data/raw/sites.csv')).toContain('M1,meadow,Long Meadow,DE,Hesse,Südheim,,,,')
  const twice = 'W1,wood,Twice,DE,Hesse,Nordheim,51.2099,9.1099,5,,,'
  const doubled = {...openStudy, 'sites.csv': `${openStudy['sites.csv']}${twice}\n`}
  expect(JSON.parse(textOf(await copyOf(doubled), 'data/archive.json'))).toMatchObject({raw: 'exact'})
  const [header = '', ...lines] = openStudy['sites.csv']!.trimEnd().split('\n')
  const shown = [`${header},coordinates_shown`, ...lines.map((line) => `${line},`), `${twice},none`]
  const kept = {...openStudy, 'sites.csv': shown.map((line) => `${line}\n`).join('')}
  expect(holding({files: await copyOf(kept)}, '51.2099')).toEqual([])
})

test('what hangs on positions alone is told without the catch, and is exactly what cannot be computed again', async () => {
  const insensitive = {...privateStudy, 'taxa.csv': privateStudy['taxa.csv']!.replace('1761",2,', '1761",,')}
  const {files, zip} = await archivedFiles(insensitive)
  const {notRecomputable} = JSON.parse(textOf(files, 'data/archive.json')) as {notRecomputable: string[]}
  expect(notRecomputable).toContain('/sites/K1/position/shown')
  const folder = temporaryFolder()
  writeFiles(folder, {'a.zip': zip})
  const {code, out} = await verified(join(folder, 'a.zip'))
  expect(code).toBe(0)
  expect(out).toContain(`${notRecomputable.length} values cannot be computed again`)
})

test('a study whose positions may be shown and are no finer than that goes in unchanged', async () => {
  const rounded = {
    ...openStudy,
    'study.yaml': openStudy['study.yaml']!.replace('coordinates: exact', 'coordinates: 0.01'),
    'sites.csv': openStudy['sites.csv']!.replace('51.2034,9.1034', '51.20,9.10').replace(
      '51.2178,9.1299',
      '51.22,9.13'
    ),
    'traps.csv': 'trap_id,site_id\nW1-1,W1\nW1-2,W1\nM1-1,M1\nM1-2,M1\n'
  }
  expect(JSON.parse(textOf(await copyOf(rounded), 'data/archive.json'))).toMatchObject({
    raw: 'exact',
    heldBack: []
  })
})
