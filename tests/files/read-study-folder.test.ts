import {mkdirSync, symlinkSync} from 'node:fs'
import {join} from 'node:path'
import {expect, test} from 'vitest'
import {DiskTrouble} from '../../src/files/disk-trouble.ts'
import {readStudyFolder} from '../../src/files/read-study-folder.ts'
import {recordReads} from '../../src/files/record-reads.ts'
import {temporaryFolder, writeFiles} from './study-on-disk.ts'

const report = JSON.stringify({format: 'pitfolio-provenance'})

test('the files of a study are listed by path in code-unit order with their sizes', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {
    'study.yaml': 'title: x',
    'b/c.csv': '12',
    'b-a.csv': '1',
    'Z.csv': '',
    'text/ä.md': 'ä'
  })
  const {files} = await readStudyFolder(folder)
  expect([...files]).toEqual([
    ['Z.csv', {size: 0}],
    ['b-a.csv', {size: 1}],
    ['b/c.csv', {size: 2}],
    ['study.yaml', {size: 8}],
    ['text/ä.md', {size: 2}]
  ])
})

test('hidden files, report/ and every other report in the folder are no part of the study', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {
    'study.yaml': '',
    '.git/config': '',
    '.hidden.csv': '',
    'report/anything.csv': '',
    'node_modules/a/b.js': '',
    'drafts/one/provenance.json': report,
    'drafts/one/tables/catch.csv': '',
    'archive/provenance.json': '{}'
  })
  expect([...(await readStudyFolder(folder)).files.keys()]).toEqual(['archive/provenance.json', 'study.yaml'])
})

test('a link is followed to a file inside the folder and nowhere else', async () => {
  const folder = join(temporaryFolder(), 'study')
  const sibling = `${folder}-2`
  writeFiles(folder, {'study.yaml': '', 'raw/catch-2026.csv': 'inside'})
  writeFiles(sibling, {'catch.csv': 'outside'})
  symlinkSync(join(folder, 'raw/catch-2026.csv'), join(folder, 'catch.csv'))
  symlinkSync('../study-2/catch.csv', join(folder, 'sites.csv'))
  symlinkSync(sibling, join(folder, 'text'))
  symlinkSync('..', join(folder, 'raw/up'))
  symlinkSync('nowhere', join(folder, 'traps.csv'))
  symlinkSync('traps2.csv', join(folder, 'traps2.csv'))
  const {files, skipped, read} = await readStudyFolder(folder)
  expect([...files.keys()]).toEqual(['catch.csv', 'raw/catch-2026.csv', 'study.yaml'])
  let text = ''
  for await (const chunk of read('catch.csv')) text += Buffer.from(chunk).toString()
  expect(text).toBe('inside')
  expect(Object.fromEntries(skipped.map(({path, reason}) => [path, reason]))).toEqual({
    'raw/up': 'it leads out of the study folder',
    'sites.csv': 'it leads out of the study folder',
    text: 'it leads out of the study folder',
    'traps.csv': 'it leads nowhere',
    'traps2.csv': 'it leads nowhere'
  })
})

test('a folder without study.yaml is looked into one level deep and no further', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {'a.txt': '', 'beetles/study.yaml': '', 'beetles/deep/b.txt': ''})
  expect([...(await readStudyFolder(folder)).files.keys()]).toEqual(['a.txt', 'beetles/study.yaml'])
})

test('a folder that is not there, or is a file, is a trouble with a remedy', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {'study.yaml': ''})
  for (const name of ['nowhere', 'study.yaml', 'study.yaml/below']) {
    const error: unknown = await readStudyFolder(join(folder, name)).catch((caught: unknown) => caught)
    expect(error).toBeInstanceOf(DiskTrouble)
    expect((error as DiskTrouble).remedy.length).toBeGreaterThan(10)
  }
})

test('a file that goes away before it is read is a trouble, not a fault', async () => {
  const folder = temporaryFolder()
  mkdirSync(join(folder, 'x'))
  const {read} = await readStudyFolder(folder)
  const reading = async (): Promise<void> => {
    for await (const _ of read('gone.csv'));
  }
  await expect(reading()).rejects.toThrow('gone.csv is not there')
})

test('only what was read counts as an input, also when it was read in part', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {'study.yaml': 'title: x', 'part.csv': 'a,b\n1,2\n', 'never.csv': 'x'})
  const {source, inputs} = recordReads(await readStudyFolder(folder))
  for await (const _ of source.read('study.yaml'));
  for await (const _ of source.read('part.csv')) break
  expect((await inputs()).map(({path, bytes}) => [path, bytes])).toEqual([
    ['part.csv', 8],
    ['study.yaml', 8]
  ])
})
