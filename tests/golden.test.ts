import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs'
import {dirname} from 'node:path'
import {fileURLToPath} from 'node:url'
import {beforeAll, describe, expect, test} from 'vitest'
import {readAssets} from '../src/files/read-assets.ts'
import type {Outputs} from '../src/model/source.ts'
import {buildReport} from '../src/pipeline.ts'
import {exampleStudy} from './example-season/make-example.ts'
import {memorySource} from './memory-source.ts'

/**
 * What readers of the example study get, word for word. `UPDATE=1 npx vitest run tests/golden.test.ts` rewrites the
 * files: read the difference before it is committed, and say in CHANGELOG.md which numbers moved and why.
 */
const documents = [
  'chapter.md',
  'site-OAK2.md',
  'site-OAK3.md',
  'site-BAR2.md',
  'findings.json',
  'references.bib'
]
const folder = fileURLToPath(new URL('golden/example/', import.meta.url))

let outputs: Outputs

beforeAll(async () => {
  const report = await buildReport(memorySource(exampleStudy()), await readAssets())
  if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
  outputs = report.outputs
})

describe('the report of the example study', () => {
  test.each(documents)('%s is what was read and agreed to', (name) => {
    const made = String(outputs.get(name))
    const file = folder + name
    if (process.env.UPDATE) {
      mkdirSync(dirname(file), {recursive: true})
      writeFileSync(file, made)
    }
    expect(existsSync(file), `${name} has no golden file yet: UPDATE=1`).toBe(true)
    expect(made).toBe(readFileSync(file, 'utf8'))
  })
})
