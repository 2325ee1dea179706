import {createHash} from 'node:crypto'
import {mkdirSync, readFileSync, rmSync, symlinkSync} from 'node:fs'
import {join} from 'node:path'
import {describe, expect, test} from 'vitest'
import {checkStudy} from '../../src/check-study.ts'
import {type BuildCommandOptions, build} from '../../src/cli/build.ts'
import {DiskTrouble} from '../../src/files/disk-trouble.ts'
import {provenanceSchema} from '../../src/model/provenance.ts'
import type {buildReport} from '../../src/pipeline.ts'
import {everythingIn, rowsIn, studyOnDisk, temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {capturedTerminal, run} from './captured-terminal.ts'

/** A report of three small files, so that these tests are about the folder and not about what stands in it. */
const smallReport: typeof buildReport = async (source) => {
  const usable = await checkStudy(source)
  if ('unreadable' in usable) return usable
  const title = usable.study.settings.title ?? ''
  const outputs = new Map([
    ['figures/effort.svg', '<svg/>'],
    ['index.html', `<title>${title}</title>`],
    ['site-W1.html', 'W1']
  ])
  return {usable, textFindings: [], outputs}
}

async function buildSmall(study: string, options: BuildCommandOptions = {}, make = smallReport) {
  const captured = capturedTerminal()
  try {
    const code = await build(study, options, captured.terminal, make)
    return {code, out: captured.out(), err: captured.err()}
  } catch (error) {
    if (!(error instanceof DiskTrouble)) throw error
    return {code: 2, out: captured.out(), err: [error.message, ...error.files, error.remedy].join('\n')}
  }
}

const slip = {
  'catch.csv':
    'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,12*\nW1-1,2026-05-18,Carabus problematicus,3\nW1-1,2026-06-01,Abax parallelepipedus,2\n'
}

test('a build makes the whole report in report/, says where it stands and what to open, and ends with 0', async () => {
  const study = studyOnDisk(slip)
  const {code, out, err} = await run(['build', study])
  expect(err).toBe('')
  expect(code).toBe(0)
  const files = Object.entries(everythingIn(join(study, 'report'))).filter(
    ([, content]) => content !== '(folder)'
  )
  expect(out).toContain(
    `The report stands in ${study}/report: ${files.length} files.\nOpen first: ${study}/report/index.html\n`
  )
  expect(out).toContain(`1 error; 1 of ${rowsIn(study)} rows set aside.\n`)
  expect(out).toContain(`To see them: pitfolio check ${study}\n`)
  for (const name of [
    'index.html',
    'chapter.html',
    'season.html',
    'site-W1.html',
    'results.json',
    'findings.json',
    'references.bib'
  ]) {
    expect(files.map(([path]) => path)).toContain(name)
  }
})

test('provenance.json lists every input that was read and every other output with size and hash, and no machine or clock', async () => {
  const study = studyOnDisk({'photos/trap.jpg': 'not read', 'stray.txt': 'not read'})
  await buildSmall(study)
  const report = join(study, 'report')
  const text = readFileSync(join(report, 'provenance.json'), 'utf8')
  const provenance = provenanceSchema.parse(JSON.parse(text))
  const hashed = (folder: string, path: string) => {
    const bytes = readFileSync(join(folder, path))
    return {path, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex')}
  }
  expect(provenance).toEqual({
    format: 'pitfolio-provenance',
    formatVersion: 1,
    tool: {name: 'pitfolio', version: provenance.tool.version},
    options: {},
    seed: 1,
    inputs: ['catch.csv', 'sites.csv', 'study.yaml', 'taxa.csv', 'traps.csv', 'visits.csv'].map((path) =>
      hashed(study, path)
    ),
    outputs: ['figures/effort.svg', 'index.html', 'site-W1.html'].map((path) => hashed(report, path))
  })
  expect(text).not.toContain(study)
})

test('a rebuild of an untouched report replaces it and leaves nothing beside it', async () => {
  const study = studyOnDisk()
  await buildSmall(study)
  const first = everythingIn(study)
  expect((await buildSmall(study)).code).toBe(0)
  expect(everythingIn(study)).toEqual(first)
  writeFiles(study, {
    'study.yaml': `${first['study.yaml']}analysis: {seed: 7}\n`.replace('two places', 'three places')
  })
  expect((await buildSmall(study)).code).toBe(0)
  const second = everythingIn(study)
  expect(second['report/index.html']).toBe('<title>Beetles of three places</title>')
  expect(second['report/provenance.json']).toContain('"seed": 7')
  expect(Object.keys(second)).toEqual(Object.keys(first))
})

test('a report that was edited is left alone, with the names of the files; --force replaces it', async () => {
  const study = studyOnDisk()
  await buildSmall(study)
  writeFiles(join(study, 'report'), {
    'index.html': '<title>Beetles of two placeS</title>',
    'notes/mine.txt': 'mine'
  })
  const before = everythingIn(study)
  const refused = await buildSmall(study)
  expect(refused).toMatchObject({code: 2, out: ''})
  expect(refused.err).toContain(
    'was edited since pitfolio wrote it\nchanged: index.html\nadded: notes/mine.txt\n'
  )
  expect(refused.err).toContain('--force')
  expect(everythingIn(study)).toEqual(before)
  expect((await buildSmall(study, {force: true})).code).toBe(0)
  expect(Object.keys(everythingIn(join(study, 'report')))).toEqual([
    'figures',
    'figures/effort.svg',
    'index.html',
    'provenance.json',
    'site-W1.html'
  ])
})

test('a file that somebody deleted from a report is made again, and what a file manager leaves is no edit', async () => {
  const study = studyOnDisk()
  await buildSmall(study)
  rmSync(join(study, 'report/site-W1.html'))
  writeFiles(join(study, 'report'), {'.DS_Store': 'x', 'figures/Thumbs.db': 'x'})
  expect((await buildSmall(study)).code).toBe(0)
  expect(Object.keys(everythingIn(join(study, 'report')))).toContain('site-W1.html')
})

test('a link to the same bytes in a report counts as an edit', async () => {
  const study = studyOnDisk({'page.txt': '<title>Beetles of two places</title>'})
  await buildSmall(study)
  rmSync(join(study, 'report/index.html'))
  symlinkSync(join(study, 'page.txt'), join(study, 'report/index.html'))
  expect((await buildSmall(study)).err).toContain('changed: index.html')
})

describe('what pitfolio did not make is never replaced, not even with --force', () => {
  const notOurs: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    'a folder with something in it': {'report/thesis.docx': 'years of work'},
    'a folder whose provenance.json is of another program': {'report/provenance.json': '{"format": "other"}'},
    'a folder whose provenance.json is no JSON': {
      'report/provenance.json': 'hello',
      'report/index.html': 'x'
    },
    'a folder whose provenance.json lost its lists': {
      'report/provenance.json': '{"format": "pitfolio-provenance"}'
    },
    'a file': {report: 'a file of that name'}
  }
  for (const [name, files] of Object.entries(notOurs)) {
    test(name, async () => {
      const study = studyOnDisk(files)
      const before = everythingIn(study)
      for (const force of [false, true]) {
        const {code, err} = await buildSmall(study, {force})
        expect(code).toBe(2)
        expect(err).toMatch(/is not a report that pitfolio made|is a file/)
      }
      expect(everythingIn(study)).toEqual(before)
    })
  }

  test('a report into which somebody put a study', async () => {
    const study = studyOnDisk()
    await buildSmall(study)
    writeFiles(join(study, 'report'), {
      'next/study.yaml': 'title: the next one\n',
      'study.yaml': 'title: mine\n'
    })
    const before = everythingIn(study)
    expect((await buildSmall(study, {force: true})).err).toContain('holds a study.yaml')
    expect(everythingIn(study)).toEqual(before)
  })
})

describe('--out', () => {
  const places: readonly (readonly [name: string, place: (study: string) => string, said: RegExp])[] = [
    ['the study folder', (study) => study, /is the study folder itself/],
    ['the study folder by another way', (study) => `${study}/text/..`, /is the study folder itself/],
    ['a folder that holds the study', (study) => join(study, '..'), /holds the study folder/],
    ['the root of the disk', () => '/', /holds the study folder/],
    [
      'a folder with texts of the study',
      (study) => join(study, 'text'),
      /stands where the study keeps text\/intro\.md/
    ],
    [
      'inside a folder with texts of the study',
      (study) => join(study, 'text/new/report'),
      /among files of the study, such as text\/intro\.md/
    ],
    ['a table of the study', (study) => join(study, 'catch.csv'), /stands where the study keeps catch\.csv/],
    ['below a table of the study', (study) => join(study, 'catch.csv/report'), /catch\.csv/]
  ]
  for (const [name, place, said] of places) {
    test(`${name} is refused, with --force too, and nothing is written`, async () => {
      const study = studyOnDisk({'text/intro.md': 'words'})
      const before = everythingIn(join(study, '..'))
      for (const force of [false, true]) {
        const {code, err} = await buildSmall(study, {out: place(study), force})
        expect(code).toBe(2)
        expect(err).toMatch(said)
      }
      expect(everythingIn(join(study, '..'))).toEqual(before)
    })
  }

  test('a link that leads to the study folder is refused', async () => {
    const study = studyOnDisk()
    const link = join(temporaryFolder(), 'link')
    symlinkSync(study, link)
    expect((await buildSmall(study, {out: link})).err).toContain('is the study folder itself')
    expect((await buildSmall(study, {out: join(link, 'catch.csv')})).err).toContain(
      'stands where the study keeps catch.csv'
    )
  })

  test('a folder elsewhere is made with the folders above it; an empty one is filled', async () => {
    const study = studyOnDisk()
    const elsewhere = temporaryFolder()
    expect((await buildSmall(study, {out: join(elsewhere, 'a/b/draft')})).code).toBe(0)
    expect(Object.keys(everythingIn(elsewhere))).toContain('a/b/draft/index.html')
    mkdirSync(join(elsewhere, 'empty'))
    expect((await buildSmall(study, {out: join(elsewhere, 'empty')})).code).toBe(0)
    expect(Object.keys(everythingIn(join(elsewhere, 'empty')))).toContain('index.html')
  })

  test('a report elsewhere in the study folder is no input of the next one', async () => {
    const study = studyOnDisk()
    expect((await buildSmall(study, {out: join(study, 'drafts/one')})).code).toBe(0)
    expect((await buildSmall(study, {out: join(study, 'drafts/two')})).code).toBe(0)
    const files = everythingIn(study)
    expect(files['drafts/two/provenance.json']).toBe(files['drafts/one/provenance.json'])
  })
})

test('--strict stops at any error with 1 and writes nothing; cautions do not stop it', async () => {
  const study = studyOnDisk(slip)
  const before = everythingIn(study)
  const {code, out, err} = await run(['build', study, '--strict'])
  expect({code, out}).toEqual({code: 1, out: ''})
  expect(err).toContain('pitfolio: 1 error; with --strict nothing is written\n')
  expect(everythingIn(study)).toEqual(before)
  const mild = studyOnDisk({
    'catch.csv':
      'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicsu,1\nW1-1,2026-06-01,Abax parallelepipedus,2\n'
  })
  expect((await buildSmall(mild, {strict: true})).code).toBe(0)
})

test("findings about the author's own texts are told by the build, for the check cannot see them", async () => {
  const study = studyOnDisk()
  const {out, err} = await buildSmall(study, {}, async (source, assets) => {
    const report = await smallReport(source, assets)
    if ('unreadable' in report) return report
    const place = {file: 'text/discussion.md', line: 3, column: 9}
    const finding = {
      code: 'unknown-name-in-text',
      severity: 'caution',
      place,
      message: 'no result `catc`',
      why: 'why',
      remedy: 'did you mean `catch`?'
    } as const
    return {...report, textFindings: [finding]}
  })
  expect(err).toContain('caution  unknown-name-in-text')
  expect(err).toContain('text/discussion.md:3:9  no result `catc`\n')
  expect(out).toContain(`1 caution; all ${rowsIn(study)} rows are used.`)
})

test('--only is written down in provenance.json; a document that there is not is answered with the nearest', async () => {
  const study = studyOnDisk()
  const before = everythingIn(study)
  const unknown = await buildSmall(study, {only: ['seasn']})
  expect(unknown.code).toBe(2)
  expect(unknown.err).toContain(
    'there is no document seasn; nothing was written\n  mend  Did you mean `season`?'
  )
  expect(everythingIn(study)).toEqual(before)
  expect((await buildSmall(study, {only: ['site', 'index']})).code).toBe(0)
  expect(
    provenanceSchema.parse(JSON.parse(readFileSync(join(study, 'report/provenance.json'), 'utf8'))).options
  ).toEqual({only: ['index', 'site']})
  const real = await run([
    'build',
    study,
    '--only',
    'chapter,site-W1',
    '--out',
    join(temporaryFolder(), 'some')
  ])
  expect(real.code).toBe(0)
})

test('--quiet says nothing when all goes well', async () => {
  expect(await buildSmall(studyOnDisk(slip), {quiet: true})).toEqual({code: 0, out: '', err: ''})
})

test('a catch table with a header and no rows still gives a report', async () => {
  const study = studyOnDisk({'catch.csv': 'trap_id,collected,taxon,count\n'})
  const {code, out} = await run(['build', study])
  expect(code).toBe(0)
  expect(out).toContain('The report stands in')
})

test('a table that changes while it is read stops the build before anything is written', async () => {
  const study = studyOnDisk()
  const before = Object.keys(everythingIn(study))
  const {code, err} = await buildSmall(study, {}, async (source, assets) => {
    const report = await smallReport(source, assets)
    writeFiles(study, {
      'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Abax parallelepipedus,9\n'
    })
    for await (const _ of source.read('catch.csv'));
    return report
  })
  expect(code).toBe(2)
  expect(err).toContain('catch.csv changed while it was being read')
  expect(Object.keys(everythingIn(study))).toEqual(before)
})

test('a file that was saved into the old report while the new one was made is not lost', async () => {
  const study = studyOnDisk()
  await buildSmall(study)
  const {code, err} = await buildSmall(study, {}, async (source, assets) => {
    writeFiles(study, {'report/index.html': 'edited just now'})
    return smallReport(source, assets)
  })
  expect(code).toBe(2)
  expect(err).toContain('changed: index.html')
  expect(everythingIn(study)['report/index.html']).toBe('edited just now')
})
