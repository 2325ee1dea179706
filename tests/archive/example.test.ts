import {readdirSync, readFileSync} from 'node:fs'
import {join} from 'node:path'
import {expect, test} from 'vitest'
import {run} from '../cli/captured-terminal.ts'
import {temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {textOf, unpacked, unpackTo} from './archive-on-disk.ts'
import {checkBag} from './check-bag.ts'
import {checkDarwinCore} from './check-darwin-core.ts'

const example = new URL('../../example-study/', import.meta.url).pathname

/** The example study without the precision that only time buys. */
function exampleFiles(): Readonly<Record<string, Uint8Array | string>> {
  const files: Record<string, Uint8Array | string> = {}
  for (const entry of readdirSync(example, {withFileTypes: true, recursive: true})) {
    const path = join(entry.parentPath, entry.name).slice(example.length)
    if (entry.isFile() && !path.startsWith('report/')) files[path] = readFileSync(join(example, path))
  }
  const settings = String(files['study.yaml'])
  files['study.yaml'] = settings
    .replace('replicates: 1000', 'replicates: 10')
    .replace('permutations: 9999', 'permutations: 99')
  return files
}

test('the example study is archived with its whole report, and with the originals every document is made again byte for byte', async () => {
  const folder = temporaryFolder()
  writeFiles(join(folder, 'study'), exampleFiles())
  const zip = join(folder, 'a.zip')
  expect((await run(['archive', join(folder, 'study'), '--out', zip, '--exact'])).code).toBe(0)
  const {code, out, err} = await run(['verify', zip])
  expect({code, err}).toEqual({code: 0, err: ''})
  expect(out).toMatch(/\d+ files made again, byte for byte the same\./)
  const {files} = unpacked(zip)
  expect(checkBag(files)).toEqual([])
  expect(checkDarwinCore(files)).toEqual([])
  // No document that is meant for others holds an exact position, whatever the raw files hold.
  const positions = readFileSync(join(example, 'sites.csv'), 'utf8')
    .match(/\d+\.\d{5},\d+\.\d{5}/g)!
    .map((pair) => pair.split(','))
  expect(positions).toHaveLength(12)
  for (const [path, bytes] of files) {
    if (path.startsWith('data/raw/')) continue
    const text = Buffer.from(bytes).toString('latin1')
    for (const [latitude = '', longitude = ''] of positions)
      expect(
        text.includes(latitude.replace(/0+$/, '')) && text.includes(longitude.replace(/0+$/, '')),
        path
      ).toBe(false)
  }
}, 180_000)

test('the copy that others may see verifies, builds as it is, and ties no sensitive kind to a place', async () => {
  const folder = temporaryFolder()
  writeFiles(join(folder, 'study'), exampleFiles())
  const zip = join(folder, 'a.zip')
  expect((await run(['archive', join(folder, 'study'), '--out', zip])).code).toBe(0)
  const {code, out} = await run(['verify', zip])
  expect(code).toBe(0)
  expect(out).toContain('cannot be computed again from the copy')
  const {files} = unpacked(zip)
  expect(checkBag(files)).toEqual([])
  expect(checkDarwinCore(files)).toEqual([])
  for (const [path, bytes] of files)
    if (path.startsWith('data/raw/'))
      expect(Buffer.from(bytes).includes('Carabus intricatus'), path).toBe(false)
  unpackTo(join(folder, 'unpacked'), files)
  const raw = join(folder, 'unpacked/data/raw')
  expect((await run(['build', raw, '--out', join(folder, 'again')])).code).toBe(0)
  // The nearest named place of the wood where the sensitive beetle was caught; its other sites name it themselves.
  const {sites} = JSON.parse(textOf(files, 'data/report/results.json')) as {
    sites: {id: string; locality?: string}[]
  }
  expect(sites.find(({id}) => id === 'OAK3')?.locality).toBeUndefined()
  expect(sites.find(({id}) => id === 'OAK1')?.locality).toBe('Upper Fold')
}, 180_000)
