import {chmodSync} from 'node:fs'
import {join} from 'node:path'
import {expect, test} from 'vitest'
import {DiskTrouble} from '../../src/files/disk-trouble.ts'
import {outputFolder} from '../../src/files/output-folder.ts'
import {readStudyFolder} from '../../src/files/read-study-folder.ts'
import {writeNewFolder} from '../../src/files/write-new-folder.ts'
import {writeReport} from '../../src/files/write-report.ts'
import {everythingIn, studyOnDisk} from './study-on-disk.ts'
import {withoutRights} from './without-rights.ts'

/** A study that everybody may look into, but not change. */
function openStudy(): string {
  const study = studyOnDisk()
  chmodSync(join(study, '..'), 0o755)
  chmodSync(study, 0o755)
  return study
}

const troubleOf = (work: () => Promise<unknown>): Promise<unknown> =>
  withoutRights(work).catch((error: unknown) => error)

test('a folder that may not be read is a trouble that says so', async () => {
  const study = openStudy()
  chmodSync(study, 0o000)
  const error = await troubleOf(() => readStudyFolder(study))
  chmodSync(study, 0o755)
  expect(error).toBeInstanceOf(DiskTrouble)
  expect((error as DiskTrouble).message).toBe(`${study} may not be opened: permission denied`)
})

test('a table that may not be read is a trouble that names it', async () => {
  const study = openStudy()
  chmodSync(join(study, 'catch.csv'), 0o000)
  const error = await troubleOf(async () => {
    const {read} = await readStudyFolder(study)
    for await (const _ of read('catch.csv'));
  })
  expect(error).toBeInstanceOf(DiskTrouble)
  expect((error as DiskTrouble).message).toBe('catch.csv may not be opened: permission denied')
})

test('a report or a new study in a folder that may not be written to is a trouble, and nothing is written', async () => {
  const study = openStudy()
  chmodSync(study, 0o555)
  const before = everythingIn(study)
  const report = await troubleOf(async () => {
    const source = await readStudyFolder(study)
    const target = await outputFolder(source, join(study, 'a/report'), false)
    await writeReport(source, target, new Map([['index.html', 'x']]), false)
  })
  expect(report).toBeInstanceOf(DiskTrouble)
  const fresh = await troubleOf(() => writeNewFolder(join(study, 'new'), new Map([['study.yaml', '']])))
  expect(fresh).toBeInstanceOf(DiskTrouble)
  expect(everythingIn(study)).toEqual(before)
  chmodSync(study, 0o755)
})
