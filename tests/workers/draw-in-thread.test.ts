import {existsSync, writeFileSync} from 'node:fs'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {expect, test} from 'vitest'
import type {PictureRequest} from '../../src/model/draw-picture.ts'
import {renderSvg} from '../../src/svg/render-svg.ts'
import {drawInThread} from '../../src/workers/draw-in-thread.ts'
import {temporaryFolder} from '../files/study-on-disk.ts'

const entry = new URL('../../dist/pictures-thread.js', import.meta.url)

function bars(id: string, values: readonly number[]): PictureRequest {
  const data = {values: values.map((value, index) => ({habitat: `Wood ${index}`, value}))}
  const encoding = {x: {field: 'value', type: 'quantitative'}, y: {field: 'habitat', type: 'nominal'}}
  return {id, spec: {data, mark: {type: 'bar', clip: true}, encoding}, title: id, description: 'Bars.'}
}

const inlineIsNotMeant = () => Promise.reject(new Error('drawn here'))

test('pictures of a thread are those that would be drawn here, in whatever order they are asked for', async () => {
  expect(existsSync(entry), 'npm run build').toBe(true)
  const draw = drawInThread(entry)
  const requests = [bars('one', [1, 2]), bars('two', [3]), bars('three', [5, 8, 13])]
  const drawn = await Promise.all(requests.map((request) => draw(request, inlineIsNotMeant)))
  const here = await Promise.all([...requests].reverse().map((request) => renderSvg(request)))
  expect(drawn).toEqual(here.reverse())
})

test('a faulty chart is told by name, and the next is drawn', async () => {
  const draw = drawInThread(entry)
  await expect(draw({...bars('torn', [1]), id: '9'}, inlineIsNotMeant)).rejects.toThrow(
    'Figure 9: the id must'
  )
  expect(await draw(bars('whole', [1]), inlineIsNotMeant)).toContain('<svg')
})

test('a thread that cannot start, or dies at its work, leaves the drawing here', async () => {
  const inline = ({id}: PictureRequest) => Promise.resolve(`${id}, drawn here`)
  const dying = join(temporaryFolder(), 'dying.mjs')
  writeFileSync(
    dying,
    "import {parentPort} from 'node:worker_threads'\nparentPort.on('message', () => process.exit(3))"
  )
  for (const script of [new URL('file:///nowhere/thread.js'), pathToFileURL(dying)]) {
    const draw = drawInThread(script)
    const requests = [bars('one', [1]), bars('two', [2])]
    expect(await Promise.all(requests.map((request) => draw(request, inline)))).toEqual([
      'one, drawn here',
      'two, drawn here'
    ])
    expect(await draw(bars('three', [1]), inline)).toBe('three, drawn here')
  }
})
