import {symlinkSync} from 'node:fs'
import {join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {expect, test} from 'vitest'
import {everythingIn, studyOnDisk, temporaryFolder} from '../files/study-on-disk.ts'
import {program, runDist} from './run-dist.ts'

const example = fileURLToPath(new URL('../../example-study', import.meta.url))

test('the built command works from any folder, through a link as well, and takes the folder it is in', async () => {
  const link = join(temporaryFolder(), 'pitfolio')
  symlinkSync(program, link)
  const {code, out, err} = await runDist(['check'], {folder: example, program: link})
  expect(err).toBe('')
  expect(out).toContain('Next: mend them, or build without these rows: pitfolio build .\n')
  expect(code).toBe(1)
})

test('exit codes are those of the contract', async () => {
  expect((await runDist(['--help'])).code).toBe(0)
  expect((await runDist(['check', studyOnDisk()])).code).toBe(0)
  expect((await runDist(['check', example])).code).toBe(1)
  expect((await runDist(['check', temporaryFolder()])).code).toBe(2)
  expect((await runDist(['chekc'])).code).toBe(2)
})

test('a build of a folder that cannot be read ends by itself, threads or none', async () => {
  for (const words of [
    ['build', studyOnDisk({'catch.csv': ''})],
    ['build', temporaryFolder()]
  ]) {
    let late: NodeJS.Timeout | undefined
    const {code} = await runDist(words, {
      disturb: (child) => {
        late = setTimeout(() => child.kill(), 20_000)
      }
    })
    clearTimeout(late)
    expect(code).toBe(2)
  }
}, 60_000)

test('init, check and build follow each other without a word on standard error', async () => {
  const folder = temporaryFolder()
  for (const words of [
    ['init', 'my study'],
    ['check', 'my study'],
    ['build', 'my study']
  ]) {
    expect(await runDist(words, {folder})).toMatchObject({code: 0, err: ''})
  }
  expect(Object.keys(everythingIn(folder))).toContain('my study/report/index.html')
})

test('a reader that stops listening is no fault, and the exit code stays true', async () => {
  const {code, err} = await runDist(['check', example, '--json'], {
    disturb: (child) => {
      child.stdout?.destroy()
    }
  })
  expect(err).toBe('')
  expect(code).toBe(1)
})

test('colour is not for pipes', async () => {
  const {out} = await runDist(['check', example], {env: {TERM: 'xterm-256color', LANG: 'C.UTF-8'}})
  expect(out).not.toContain('\u001b')
})
