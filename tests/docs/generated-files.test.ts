import {readFileSync} from 'node:fs'
import {Ajv2020} from 'ajv/dist/2020.js'
import {load} from 'js-yaml'
import {expect, test} from 'vitest'
import {generatedFiles} from './generated-files.ts'
import {schemaFiles} from './schema-files.ts'

const root = new URL('../../', import.meta.url)

for (const [path, text] of generatedFiles()) {
  test(`${path} is what the code makes (npm run docs)`, () => {
    expect(readFileSync(new URL(path, root), 'utf8')).toBe(text)
  })
}

test('every schema is valid JSON Schema 2020-12 and keeps the descriptions', () => {
  for (const text of schemaFiles().values()) {
    const schema = JSON.parse(text) as {$schema: string}
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(() => new Ajv2020({strict: false}).compile(schema)).not.toThrow()
    expect(text.match(/"description"/g)?.length).toBeGreaterThan(3)
  }
})

test('the schema of study.yaml accepts the example and the starter, and refuses a slip', () => {
  const validate = new Ajv2020({strict: false}).compile(
    JSON.parse(schemaFiles().get('src/model/study.schema.json') ?? '{}')
  )
  for (const path of ['example-study/study.yaml', 'templates/starter/study.yaml']) {
    const settings = load(readFileSync(new URL(path, root), 'utf8'))
    validate(settings)
    expect(validate.errors, path).toBe(null)
  }
  expect(validate({titel: 'x'})).toBe(false)
  expect(validate({analysis: {confidence: 95}})).toBe(false)
})

test('study.yaml of the example and the starter name a schema that is there', () => {
  for (const path of ['example-study/study.yaml', 'templates/starter/study.yaml']) {
    const [line = ''] = readFileSync(new URL(path, root), 'utf8').split('\n')
    const [, named = ''] = /^# yaml-language-server: \$schema=(.+)$/.exec(line) ?? []
    expect(readFileSync(new URL(named, new URL(path, root)), 'utf8')).toContain('study.yaml of pitfolio')
  }
})
