import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {expect, test} from 'vitest'
import {packageRoot} from '../../src/files/package-root.ts'
import {readAssets} from '../../src/files/read-assets.ts'
import {temporaryFolder, writeFiles} from './study-on-disk.ts'

test('templates are read by name, without the starter and the pages of the documentation', async () => {
  const {templates, toolVersion} = await readAssets()
  const root = new URL('../../', import.meta.url)
  expect(templates.get('references.json')).toBe(
    readFileSync(new URL('templates/references.json', root), 'utf8')
  )
  expect([...templates.keys()].filter((name) => /^(starter|docs)\//.test(name))).toEqual([])
  expect(toolVersion).toBe(
    (JSON.parse(readFileSync(new URL('package.json', root), 'utf8')) as {version: string}).version
  )
})

test('the package is found from any depth of it, past the package.json of others', () => {
  const folder = temporaryFolder()
  writeFiles(folder, {
    'package.json': '{"name": "pitfolio", "version": "9.8.7"}',
    'dist/package.json': '{"type": "module"}'
  })
  expect(packageRoot(pathToFileURL(join(folder, 'dist/parts/x.js')).href)).toEqual({folder, version: '9.8.7'})
  expect(() => packageRoot(pathToFileURL(join(temporaryFolder(), 'x.js')).href)).toThrow('package.json')
})
