import {execFileSync} from 'node:child_process'
import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {describe, expect, test} from 'vitest'
import {archiveFileSchema} from '../../src/model/archive-file.ts'
import {run} from '../cli/captured-terminal.ts'
import {everythingIn, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {testWith} from '../needs.ts'
import {madeArchive, textOf, unpacked, unpackTo} from './archive-on-disk.ts'
import {checkBag} from './check-bag.ts'
import {openStudy, privateStudy} from './small-study.ts'

test('an archive of a study without private matters holds its files byte for byte, the report and every description', async () => {
  const {files, top, out} = await madeArchive(openStudy)
  expect(top).toBe('two-places-2026')
  for (const [path, content] of Object.entries(openStudy)) expect(textOf(files, `data/raw/${path}`)).toBe(content)
  for (const path of ['report/results.json', 'report/findings.json', 'report/provenance.json', 'report/chapter.html', 'report/season.md', 'README.md', 'CITATION.cff', 'datapackage.json', 'ro-crate-metadata.json', 'archive.json', 'dwca/meta.xml', 'dwca/eml.xml', 'dwca/event.csv', 'dwca/occurrence.csv', 'dwca/measurement.csv', 'dwca/humboldt.csv'])
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
  for (const study of [openStudy, privateStudy]) {
    const {files} = await madeArchive(study)
    expect(checkBag(files)).toEqual([])
    const broken = new Map(files)
    broken.set('data/README.md', Buffer.from('other'))
    expect(checkBag(broken)).not.toEqual([])
  }
})

testWith('sha512sum')('sha512sum and sha256sum accept every line of the manifests', async () => {
  const {files} = await madeArchive(openStudy)
  const folder = unpackTo(temporaryFolder(), files)
  for (const [tool, kind] of [['sha512sum', 'sha512'], ['sha256sum', 'sha256']] as const) {
    for (const manifest of ['manifest', 'tagmanifest']) {
      const said = execFileSync(tool, ['--check', '--strict', `${manifest}-${kind}.txt`], {cwd: folder}).toString()
      expect(said.trim().split('\n').every((line) => line.endsWith(': OK'))).toBe(true)
    }
  }
})

describe('the same folder gives the same archive', () => {
  const cli = new URL('../../src/cli/main.ts', import.meta.url).pathname

  test('on another clock, in another zone, with another umask and language', async () => {
    const {study, zip} = await madeArchive(openStudy)
    const first = readFileSync(zip)
    const zones = ['Pacific/Auckland', 'America/Lima', 'UTC']
    for (const [index, zone] of zones.entries()) {
      const again = join(temporaryFolder(), 'again.zip')
      const late = 'data:text/javascript,const real=Date;const late=1.9e12;globalThis.Date=class extends real{constructor(...a){a.length?super(...a):super(late)}static now(){return late}}'
      execFileSync('sh', ['-c', `umask ${index === 0 ? '077' : '002'} && "$@"`, 'sh', process.execPath, '--import', 'tsx', '--import', late, cli, 'archive', study, '--out', again], {
        env: {...process.env, TZ: zone, LANG: 'tr_TR.UTF-8', LC_ALL: index === 1 ? 'C' : 'de_DE.UTF-8', SOURCE_DATE_EPOCH: `${index * 1e8}`}
      })
      expect(readFileSync(again).equals(first)).toBe(true)
    }
  })

  test('with the report standing in the folder or made for the archive, and with an older archive beside the records', async () => {
    const {study, zip} = await madeArchive(openStudy)
    const first = readFileSync(zip)
    expect((await run(['build', study])).code).toBe(0)
    for (let time = 0; time < 2; time++) {
      const inside = join(study, 'two-places-2026.zip')
      expect((await run(['archive', study])).code).toBe(0)
      expect(readFileSync(inside).equals(first)).toBe(true)
    }
  })
})

test('an archive of pitfolio is replaced, and anything else that stands in its place is left alone', async () => {
  const {study, zip} = await madeArchive(openStudy)
  expect((await run(['archive', study, '--out', zip])).code).toBe(0)
  const folder = temporaryFolder()
  writeFiles(folder, {'notes.zip': 'mine', 'sub/x': ''})
  for (const place of ['notes.zip', 'sub']) {
    const {code, err} = await run(['archive', study, '--out', join(folder, place)])
    expect(code).toBe(2)
    expect(err).toMatch(/is no archive that pitfolio made|is a folder/)
  }
  expect(readFileSync(join(folder, 'notes.zip'), 'utf8')).toBe('mine')
  const raw = await run(['archive', study, '--out', join(study, 'catch.csv')])
  expect(raw.code).toBe(2)
  expect(readFileSync(join(study, 'catch.csv'), 'utf8')).toBe(openStudy['catch.csv'])
})

test('a report that was edited is not archived, one that is out of date is made anew and the folder left as it is', async () => {
  const {study, zip} = await madeArchive(openStudy)
  expect((await run(['build', study])).code).toBe(0)
  writeFiles(study, {'catch.csv': openStudy['catch.csv']!.replace('problematicus,3', 'problematicus,4')})
  const before = everythingIn(study)
  const stale = await run(['archive', study, '--out', zip])
  expect(stale.code).toBe(0)
  expect(stale.err).toContain('is not that of the records as they are now')
  expect(everythingIn(study)).toEqual(before)
  expect(textOf(unpacked(zip).files, 'data/report/provenance.json')).not.toBe(before['report/provenance.json'])
  expect((await run(['verify', zip])).code).toBe(0)
  writeFiles(study, {'report/chapter.md': 'mine'})
  const edited = await run(['archive', study, '--out', zip])
  expect(edited.code).toBe(2)
  expect(edited.err).toContain('changed: chapter.md')
})

test('the raw folder of an archive is a study like any other: build makes the same report of it', async () => {
  const {files} = await madeArchive(openStudy)
  const folder = unpackTo(temporaryFolder(), files)
  const out = join(temporaryFolder(), 'report')
  const built = await run(['build', join(folder, 'data/raw'), '--out', out])
  expect(built.code).toBe(0)
  for (const [path, content] of Object.entries(everythingIn(out)))
    if (content !== '(folder)') expect(Buffer.from(files.get(`data/report/${path}`)!).toString('latin1'), path).toBe(content)
  const {files: copy} = await madeArchive(privateStudy)
  const fromCopy = await run(['build', join(unpackTo(temporaryFolder(), copy), 'data/raw'), '--out', out, '--force'])
  expect(fromCopy).toMatchObject({code: 0, err: ''})
})

test('a study without target groups is archived without a word on what was not found', async () => {
  const settings = openStudy['study.yaml']!.replace(/target: .*\n/, '')
  const {files, out} = await madeArchive({...openStudy, 'study.yaml': settings})
  expect([...files.keys()]).not.toContain('data/dwca/humboldt.csv')
  expect(textOf(files, 'data/dwca/occurrence.csv')).not.toContain(',absent,')
  expect(out.replace(/\s+/g, ' ')).toContain('study.yaml names no target groups')
})

test('nothing can be archived of a folder that cannot be read, and nothing is left behind', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {'study/study.yaml': 'title: T\n'})
  const {code, err} = await run(['archive', join(folder, 'study')])
  expect(code).toBe(2)
  expect(err).toContain('sites.csv is not there')
  expect(Object.keys(everythingIn(folder))).toEqual(['study', 'study/study.yaml'])
})
