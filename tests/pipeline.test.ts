import {expect, test} from 'vitest'
import {readAssets} from '../src/files/read-assets.ts'
import {buildReport} from '../src/pipeline.ts'
import {renderSvg} from '../src/svg/render-svg.ts'
import {writtenStudy} from './language/written-study.ts'
import {memorySource} from './memory-source.ts'

const source = () => memorySource(writtenStudy({sites: {A1: 'wood'}, trapsAtSite: 1}))

// A rejection that nobody handles fails the run of the tests as it ends a build.
test('pictures that cannot be drawn end a build with one fault', async () => {
  const draw = () => Promise.reject(new Error('no ink'))
  await expect(buildReport(source(), await readAssets(), {draw})).rejects.toThrow('no ink')
})

test('a page that cannot be made ends a build with its own fault, whatever becomes of the pictures', async () => {
  const assets = await readAssets()
  const templates = new Map([...assets.templates].filter(([name]) => name !== 'page.html'))
  const draw = () => Promise.reject(new Error('no ink'))
  await expect(buildReport(source(), {...assets, templates}, {draw})).rejects.toThrow(
    'templates/page.html is missing'
  )
})

test('whoever draws the pictures, the report is the same', async () => {
  const assets = await readAssets()
  const asked: string[] = []
  const own = await buildReport(source(), assets)
  const shared = await buildReport(source(), assets, {
    draw(request) {
      asked.push(request.id)
      return renderSvg(request)
    }
  })
  if ('unreadable' in own || 'unreadable' in shared) throw new Error('the study is readable')
  expect([...shared.outputs]).toEqual([...own.outputs])
  expect(asked).toContain('figure-effort')
})
