import {execFile} from 'node:child_process'
import {fileURLToPath} from 'node:url'
import {promisify} from 'node:util'
import {expect, test} from 'vitest'
import {renderSvg} from '../../src/svg/render-svg.ts'
import {drawDigests} from './draw-digest.ts'
import {exampleSpecs} from './example-specs.ts'

const names = Object.keys(exampleSpecs)
const run = promisify(execFile)

test('a chart drawn again, in another order, has the same bytes', async () => {
  const first = await drawDigests(names)
  expect(await drawDigests([...names].reverse())).toEqual(first)
})

test('charts asked for at the same time have the same bytes as one by one', async () => {
  const request = (name: string) => ({id: name, spec: exampleSpecs[name]!, title: name, description: name})
  const together = await Promise.all(names.map((name) => renderSvg(request(name))))
  for (const [index, name] of names.entries())
    expect(await renderSvg(request(name)), name).toBe(together[index])
})

test('a chart that cannot be drawn leaves the next one as it was', async () => {
  const request = {id: 'log-axis', spec: exampleSpecs['log-axis']!, title: 'x', description: 'y'}
  const before = await renderSvg(request)
  const [faulty, after] = await Promise.allSettled([renderSvg({...request, spec: {}}), renderSvg(request)])
  expect(faulty.status).toBe('rejected')
  expect(after).toEqual({status: 'fulfilled', value: before})
})

test('a frozen specification is drawn and stays as it was', async () => {
  const spec = deepFreeze(structuredClone(exampleSpecs['lines-with-bands']!))
  const svg = await renderSvg({id: 'frozen', spec, title: 'x', description: 'y'})
  expect(svg).toContain('<svg')
  expect(spec).toEqual(exampleSpecs['lines-with-bands'])
})

test.each([
  {TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8'},
  {TZ: 'America/St_Johns', LANG: 'C', LC_ALL: 'C'}
])('a process in $TZ with the language $LANG draws the same bytes', async (env) => {
  const script = fileURLToPath(new URL('print-digests.ts', import.meta.url))
  const child = await run(process.execPath, ['--import', 'tsx', script], {env: {...process.env, ...env}})
  expect(JSON.parse(child.stdout)).toEqual(await drawDigests(names))
})

function deepFreeze<T>(value: T): T {
  if (value !== null && typeof value === 'object') {
    Object.freeze(value)
    for (const part of Object.values(value)) deepFreeze(part)
  }
  return value
}
