import {mkdirSync, readFileSync, writeFileSync} from 'node:fs'
import {join} from 'node:path'
import {expect, test} from 'vitest'
import {everythingIn, rowsIn, temporaryFolder} from '../files/study-on-disk.ts'
import {run} from './captured-terminal.ts'

const schemaLine = '# yaml-language-server: $schema=./study.schema.json\n'
const schema = readFileSync(new URL('../../src/model/study.schema.json', import.meta.url), 'latin1')

test('the starter passes the check without any finding', async () => {
  const folder = join(temporaryFolder(), 'a', 'my study')
  const {code, out} = await run(['init', folder])
  expect(code).toBe(0)
  expect(out).toContain(`Next: pitfolio check '${folder}'\n`)
  const files = everythingIn(folder)
  expect(Object.keys(files)).toEqual([
    'catch.csv',
    'sites.csv',
    'study.schema.json',
    'study.yaml',
    'taxa.csv',
    'text',
    'text/introduction.md',
    'traps.csv',
    'visits.csv'
  ])
  expect(files['study.yaml']?.startsWith(schemaLine)).toBe(true)
  expect(files['study.schema.json']).toBe(schema)
  const checked = await run(['check', folder])
  expect(checked.code).toBe(0)
  expect(checked.out).toContain(`No findings; all ${rowsIn(folder)} rows are used.`)
})

test('the settings that the starter holds back are valid ones: without their # there is still no finding', async () => {
  const folder = join(temporaryFolder(), 'study')
  await run(['init', folder])
  const path = join(folder, 'study.yaml')
  const [, settings = ''] = readFileSync(path, 'utf8').split(/\n(?=title:)/)
  // A commented setting is `# name:`, `#   name:` or a list item; prose has no such beginning. Files that are
  // only named as examples stay out.
  const all = settings
    .replace(/^# (?=( *)(- )?[a-z_]+:( |$))/gm, '')
    .replace(/^# (?= {4}- Author)/m, '')
    .replace(/^(files|columns|words|decimal|dates):.*\n( +.*\n)*/gm, '')
  expect(all).toContain('\n    rim_diameter_mm: 80')
  writeFileSync(path, all)
  const {code, out, err} = await run(['check', folder])
  expect(err).toBe('')
  expect(out).toContain('No findings')
  expect(code).toBe(0)
})

test('--from-example copies the example study, with the schema beside it', async () => {
  const folder = join(temporaryFolder(), 'try-it')
  expect((await run(['init', folder, '--from-example'])).code).toBe(0)
  const files = everythingIn(folder)
  expect(files['study.yaml']?.startsWith(schemaLine)).toBe(true)
  expect(files['study.schema.json']).toBe(schema)
  expect(files['catch.csv']).toBe(
    readFileSync(new URL('../../example-study/catch.csv', import.meta.url), 'latin1')
  )
  expect(Object.keys(files).filter((path) => path.startsWith('report'))).toEqual([])
})

test('an empty folder is filled, a new repository too', async () => {
  const folder = temporaryFolder()
  mkdirSync(join(folder, '.git'))
  expect((await run(['init', folder])).code).toBe(0)
})

test('a folder that holds anything is refused and stays as it is', async () => {
  const folder = temporaryFolder()
  writeFileSync(join(folder, 'notes.txt'), 'mine')
  const before = everythingIn(folder)
  const {code, out, err} = await run(['init', folder])
  expect({code, out}).toEqual({code: 2, out: ''})
  expect(err).toContain('is not empty\n    notes.txt\n')
  expect(everythingIn(folder)).toEqual(before)
  expect((await run(['init', join(folder, 'notes.txt')])).code).toBe(2)
  expect((await run(['init', join(folder, 'notes.txt', 'x')])).code).toBe(2)
  expect(everythingIn(folder)).toEqual(before)
})
