import {hostname} from 'node:os'
import {join} from 'node:path'
import {expect, test} from 'vitest'
import {outputFolder} from '../../src/files/output-folder.ts'
import {readStudyFolder} from '../../src/files/read-study-folder.ts'
import {swapFolders} from '../../src/files/swap-folders.ts'
import {withProvenance} from '../../src/files/with-provenance.ts'
import {writeReport} from '../../src/files/write-report.ts'
import {everythingIn, studyOnDisk, temporaryFolder, writeFiles} from './study-on-disk.ts'

async function write(
  study: string,
  files: Readonly<Record<string, string>>,
  out = join(study, 'report')
): Promise<void> {
  const source = await readStudyFolder(study)
  const outputs = withProvenance(new Map(Object.entries(files)), {toolVersion: '0.0.0', seed: 1, inputs: []})
  await writeReport(source, await outputFolder(source, out, false), outputs, false)
}

/** What a run leaves that dies at the worst moment: the old report taken away, the new one not yet in its place. */
function deadRun(study: string, owner: object): void {
  const name = '.report.pitfolio-abc123'
  writeFiles(study, {
    [`${name}/owner.json`]: JSON.stringify({
      format: 'pitfolio-work',
      target: 'report',
      host: hostname(),
      pid: 2 ** 30,
      ...owner
    }),
    [`${name}/new/index.html`]: 'half'
  })
}

test('when a file cannot be written, the old report stands as before and nothing else is left', async () => {
  const study = studyOnDisk()
  await write(study, {'index.html': 'old'})
  const before = everythingIn(study)
  // A file and a folder of one name: the second cannot be made.
  await expect(write(study, {a: 'file', 'a/b': 'in a folder'})).rejects.toThrow()
  expect(everythingIn(study)).toEqual(before)
})

test('when nothing could be written, the folders above the report go again', async () => {
  const study = studyOnDisk()
  const elsewhere = temporaryFolder()
  await expect(write(study, {a: 'file', 'a/b': 'x'}, join(elsewhere, 'new/newer/report'))).rejects.toThrow()
  expect(everythingIn(elsewhere)).toEqual({})
})

test('a name that leads out of the report is a fault of ours, and is not written', async () => {
  const study = studyOnDisk()
  const before = everythingIn(join(study, '..'))
  for (const name of ['../evil', '/evil', 'a/../../evil', 'a\\b', '']) {
    await expect(write(study, {[name]: 'x'})).rejects.toThrow('a report may not hold a file named')
  }
  expect(everythingIn(join(study, '..'))).toEqual(before)
})

test('when the new folder cannot take its place, the old one is put back', async () => {
  const folder = temporaryFolder()
  writeFiles(folder, {'report/index.html': 'old', 'work/new/index.html': 'new'})
  const before = everythingIn(folder)
  const {rename} = await import('node:fs/promises')
  const failing = async (from: string, to: string): Promise<void> => {
    if (from.endsWith('new')) throw new Error('the disk says no')
    await rename(from, to)
  }
  await expect(
    swapFolders(join(folder, 'report'), join(folder, 'work/new'), join(folder, 'work/old'), failing)
  ).rejects.toThrow('the disk says no')
  expect(everythingIn(folder)).toEqual(before)
})

test('what a run that died has left is cleared away', async () => {
  const study = studyOnDisk()
  await write(study, {'index.html': 'old'})
  deadRun(study, {})
  await write(study, {'index.html': 'new'})
  const names = Object.keys(everythingIn(study))
  expect(names.filter((name) => name.startsWith('.'))).toEqual([])
  expect(everythingIn(study)['report/index.html']).toBe('new')
})

test('a report that a run took away before it died is put back, so that edits in it are not lost', async () => {
  const study = studyOnDisk()
  await write(study, {'index.html': 'old'})
  const old = Object.entries(everythingIn(join(study, 'report'))).map(([path, text]) => [
    `.report.pitfolio-abc123/old/${path}`,
    text
  ])
  const other = studyOnDisk(Object.fromEntries([...old, ['.report.pitfolio-abc123/old/notes.txt', 'mine']]))
  deadRun(other, {})
  await expect(write(other, {'index.html': 'new'})).rejects.toMatchObject({files: ['added: notes.txt']})
  const files = everythingIn(other)
  expect(files['report/notes.txt']).toBe('mine')
  expect(files['report/index.html']).toBe('old')
  expect(Object.keys(files).filter((name) => name.startsWith('.'))).toEqual([])
})

test('what is not surely left by a dead run of ours stays', async () => {
  const owners: readonly object[] = [
    {pid: process.pid},
    {host: 'another-machine'},
    {target: 'other'},
    {format: 'other'}
  ]
  for (const owner of owners) {
    const study = studyOnDisk()
    deadRun(study, owner)
    await write(study, {'index.html': 'new'})
    expect(everythingIn(study)['.report.pitfolio-abc123/new/index.html']).toBe('half')
  }
  const study = studyOnDisk({'.report.pitfolio-abc123/mine.txt': 'mine'})
  deadRun(study, {})
  await write(study, {'index.html': 'new'})
  expect(everythingIn(study)['.report.pitfolio-abc123/mine.txt']).toBe('mine')
})
