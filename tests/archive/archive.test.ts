import {execFileSync} from 'node:child_process'
import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {expect, test} from 'vitest'
import {build} from '../../src/cli/build.ts'
import {archiveFileSchema} from '../../src/model/archive-file.ts'
import {capturedTerminal, run} from '../cli/captured-terminal.ts'
import {everythingIn, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {testWith} from '../needs.ts'
import {archivedFiles, studyAndArchive, textOf, unpacked, unpackTo} from './archive-on-disk.ts'
import {checkBag} from './check-bag.ts'
import {archived, smallReport, verified} from './small-report.ts'
import {openStudy, privateStudy} from './small-study.ts'

const buildSmall = (study: string) => build(study, {}, capturedTerminal().terminal, smallReport)

test('an archive of a study without private matters holds its files byte for byte, the report and every description', async () => {
  const {files, top, out} = await archivedFiles(openStudy)
  expect(top).toBe('two-places-2026')
  for (const [path, content] of Object.entries(openStudy))
    expect(textOf(files, `data/raw/${path}`)).toBe(content)
  const described = [
    'README.md',
    'CITATION.cff',
    'datapackage.json',
    'ro-crate-metadata.json',
    'archive.json'
  ]
  const records = [
    'meta.xml',
    'eml.xml',
    'event.csv',
    'occurrence.csv',
    'measurement.csv',
    'humboldt.csv'
  ].map((file) => `dwca/${file}`)
  const report = [
    'results.json',
    'findings.json',
    'provenance.json',
    'index.html',
    'tables/catch-by-site.csv'
  ].map((file) => `report/${file}`)
  for (const path of [...described, ...records, ...report])
    expect([...files.keys()]).toContain(`data/${path}`)
  const stated = archiveFileSchema.parse(JSON.parse(textOf(files, 'data/archive.json')))
  expect(stated).toMatchObject({raw: 'exact', heldBack: [], leftOut: [], notRecomputable: []})
  expect(stated.originals.map(({path}) => path)).toEqual(Object.keys(openStudy).sort())
  expect(out).not.toContain('copy')
  const about = textOf(files, 'data/README.md')
  expect(about).toContain(`npm install --global pitfolio@${stated.tool.version}`)
  expect(about).toContain('pitfolio verify two-places-2026.zip')
})

test('the bag of an archive is valid for a second checker that was written from RFC 8493 alone', async () => {
  for (const study of [openStudy, privateStudy, {...openStudy, 'photos/100 %25.txt': 'a'}]) {
    const {files} = await archivedFiles(study)
    expect(checkBag(files)).toEqual([])
    const broken = new Map(files)
    broken.set('data/README.md', Buffer.from('other'))
    expect(checkBag(broken)).not.toEqual([])
  }
})

testWith('sha512sum')('sha512sum and sha256sum accept every line of the manifests', async () => {
  // Names as people give them; a per cent sign is written otherwise in a bag, which these programs do not know.
  const names = {...openStudy, "photos/it's [1] & å.txt": 'a', 'photos/two  spaces.txt': 'b'}
  const {files} = await archivedFiles(names)
  const folder = unpackTo(temporaryFolder(), files)
  for (const kind of ['sha512', 'sha256']) {
    for (const manifest of ['manifest', 'tagmanifest']) {
      const said = execFileSync(`${kind}sum`, ['--check', '--strict', `${manifest}-${kind}.txt`], {
        cwd: folder
      }).toString()
      expect(
        said
          .trim()
          .split('\n')
          .every((line) => line.endsWith(': OK'))
      ).toBe(true)
    }
  }
})

test('two archives of one folder are the same bytes on another clock, in another zone, with another umask and language', async () => {
  const study = join(temporaryFolder(), 'study')
  writeFiles(study, openStudy)
  const {zip: first} = await archivedFiles(openStudy)
  const helper = new URL('archive-elsewhere.ts', import.meta.url).pathname
  for (const [index, zone] of ['Pacific/Auckland', 'America/Lima'].entries()) {
    const again = join(temporaryFolder(), 'again.zip')
    const env = {
      ...process.env,
      TZ: zone,
      LC_ALL: index === 0 ? 'tr_TR.UTF-8' : 'C',
      SOURCE_DATE_EPOCH: `${index}000000000`
    }
    const umask = index === 0 ? '077' : '002'
    execFileSync(
      'sh',
      ['-c', `umask ${umask} && "$@"`, 'sh', process.execPath, '--import', 'tsx', helper, study, again],
      {env}
    )
    expect(readFileSync(again).equals(first), zone).toBe(true)
  }
}, 120_000)

test('the archive is the same with the report standing in the folder, and with older archives beside the records', async () => {
  const study = join(temporaryFolder(), 'study')
  writeFiles(study, openStudy)
  const {zip: first} = await archivedFiles(openStudy)
  expect(await buildSmall(study)).toBe(0)
  for (let time = 0; time < 2; time++) {
    expect((await archived(study)).code).toBe(0)
    expect(readFileSync(join(study, 'two-places-2026.zip')).equals(first)).toBe(true)
  }
})

test('an archive of pitfolio is replaced, and anything else that stands in its place is left alone', async () => {
  const {study, zip} = await studyAndArchive(openStudy)
  expect((await archived(study, {out: zip})).code).toBe(0)
  const folder = temporaryFolder()
  writeFiles(folder, {'notes.zip': 'mine', 'sub/x': ''})
  for (const place of ['notes.zip', 'sub']) {
    const {code, err} = await archived(study, {out: join(folder, place)})
    expect(code).toBe(2)
    expect(err).toMatch(/is no archive that pitfolio made|is a folder/)
  }
  expect(everythingIn(folder)).toEqual({'notes.zip': 'mine', sub: '(folder)', 'sub/x': ''})
  expect((await archived(study, {out: join(study, 'catch.csv')})).code).toBe(2)
  expect(readFileSync(join(study, 'catch.csv'), 'utf8')).toBe(openStudy['catch.csv'])
  expect(await buildSmall(study)).toBe(0)
  const inReport = await archived(study, {out: join(study, 'report/archive.zip')})
  expect(inReport).toMatchObject({code: 2, err: expect.stringContaining('would stand in a report')})
})

test('a report that was edited is not archived, one that is out of date is made anew and the folder left as it is', async () => {
  const {study, zip} = await studyAndArchive(openStudy)
  expect(await buildSmall(study)).toBe(0)
  writeFiles(study, {'catch.csv': openStudy['catch.csv']!.replace('problematicus,3', 'problematicus,4')})
  const before = everythingIn(study)
  const stale = await archived(study, {out: zip})
  expect(stale.code).toBe(0)
  expect(stale.err).toContain('is not that of the records as they are now')
  expect(everythingIn(study)).toEqual(before)
  expect(textOf(unpacked(zip).files, 'data/report/provenance.json')).not.toBe(
    before['report/provenance.json']
  )
  expect((await verified(zip)).code).toBe(0)
  writeFiles(study, {'report/index.html': 'mine'})
  const edited = await archived(study, {out: zip})
  expect(edited.code).toBe(2)
  expect(edited.err).toContain('changed: index.html')
})

test('the raw folder of an archive is a study like any other, and so is the copy that holds something back', async () => {
  for (const study of [openStudy, privateStudy]) {
    const {files} = await archivedFiles(study)
    const raw = join(unpackTo(temporaryFolder(), files), 'data/raw')
    expect(await buildSmall(raw)).toBe(0)
    if (study === privateStudy) continue
    for (const [path, content] of Object.entries(everythingIn(join(raw, 'report'))))
      if (content !== '(folder)')
        expect(Buffer.from(files.get(`data/report/${path}`)!).toString('latin1'), path).toBe(content)
  }
})

test('a study without target groups is archived without a word on what was not found', async () => {
  const settings = openStudy['study.yaml']!.replace(/target: .*\n/, '')
  const {files, out} = await archivedFiles({...openStudy, 'study.yaml': settings})
  expect([...files.keys()]).not.toContain('data/dwca/humboldt.csv')
  expect(textOf(files, 'data/dwca/occurrence.csv')).not.toContain(',absent,')
  expect(out.replace(/\s+/g, ' ')).toContain('study.yaml names no target groups')
})

test('nothing is archived of a folder that cannot be read, and nothing is left behind', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {'study/study.yaml': 'title: T\n'})
  const {code, err} = await run(['archive', join(folder, 'study')])
  expect(code).toBe(2)
  expect(err).toContain('sites.csv is not there')
  expect(Object.keys(everythingIn(folder))).toEqual(['study', 'study/study.yaml'])
})
