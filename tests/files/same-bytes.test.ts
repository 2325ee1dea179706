import {cpSync} from 'node:fs'
import {join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {expect, test} from 'vitest'
import {runDist} from '../cli/run-dist.ts'
import {everythingIn, temporaryFolder} from './study-on-disk.ts'

const example = fileURLToPath(new URL('../../example-study', import.meta.url))

/** The files of a report made of a copy of the example study in a folder of its own, in other surroundings. */
async function reportIn(
  folderName: string,
  env: Readonly<Record<string, string>>
): Promise<Readonly<Record<string, string>>> {
  const study = join(temporaryFolder(), folderName)
  cpSync(example, study, {recursive: true, filter: (path) => path !== join(example, 'report')})
  const {code, err} = await runDist(['build', study, '--quiet'], {env})
  expect({code, err}).toEqual({code: 0, err: ''})
  return everythingIn(join(study, 'report'))
}

test('two builds give the same bytes, whatever the folder, the time zone and the language of the machine', async () => {
  const here = await reportIn('study', {TZ: 'UTC', LANG: 'C'})
  const there = await reportIn('Çalışma 2', {
    TZ: 'Pacific/Auckland',
    LANG: 'tr_TR.UTF-8',
    LC_ALL: 'tr_TR.UTF-8',
    TERM: 'dumb'
  })
  expect(Object.keys(there)).toEqual(Object.keys(here))
  const different = Object.keys(here).filter((path) => here[path] !== there[path])
  expect(different).toEqual([])
  for (const [path, content] of Object.entries(here)) {
    expect(content.includes('/tmp/'), path).toBe(false)
  }
})
