import {execFile} from 'node:child_process'
import {fileURLToPath} from 'node:url'
import {promisify} from 'node:util'
import {expect, test, vi} from 'vitest'
import {docxDigest} from './print-docx-digest.ts'

const run = promisify(execFile)

test('a document made again, on another day, has the same bytes', async () => {
  const first = await docxDigest()
  vi.useFakeTimers({toFake: ['Date'], now: new Date('2031-07-01T12:00:00Z')})
  try {
    expect(await docxDigest()).toBe(first)
  } finally {
    vi.useRealTimers()
  }
})

test.each([
  {TZ: 'Pacific/Auckland', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8'},
  {TZ: 'America/St_Johns', LANG: 'C', LC_ALL: 'C'}
])('a process in $TZ with the language $LANG makes the same bytes', async (env) => {
  const script = fileURLToPath(new URL('print-docx-digest.ts', import.meta.url))
  const child = await run(process.execPath, ['--import', 'tsx', script], {env: {...process.env, ...env}})
  expect(child.stdout.trim()).toBe(await docxDigest())
})
