import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {expect, test} from 'vitest'
import {packageRoot} from '../../src/files/package-root.ts'
import {readAssets} from '../../src/files/read-assets.ts'
import {parseTemplate} from '../../src/report/parse-template.ts'
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

test('the trees that a build leaves beside the package are those of its templates', async () => {
  const {templates, templateTrees} = await readAssets()
  const texts = [...templates].flatMap(([name, text]) => (name.endsWith('.md') ? [text] : []))
  expect(texts.length).toBeGreaterThan(3)
  // As JSON holds them: without what is undefined.
  for (const text of texts)
    expect(templateTrees.get(text)).toEqual(JSON.parse(JSON.stringify(parseTemplate('x.md', text).tree)))
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
