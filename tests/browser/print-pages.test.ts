import {spawnSync} from 'node:child_process'
import {readdirSync, writeFileSync} from 'node:fs'
import {tmpdir} from 'node:os'
import {delimiter, dirname, join} from 'node:path'
import {expect, test} from 'vitest'
import {findBrowser} from '../../src/browser/find-browser.ts'
import {printPages} from '../../src/browser/print-pages.ts'
import {temporaryFolder} from '../files/study-on-disk.ts'
import {testWith} from '../needs.ts'
import {fakeBrowser, printing} from './fake-browser.ts'

const page = (title: string) =>
  `<!doctype html><html lang="en-GB"><head><title>${title}</title></head><body><h1>${title}</h1><p>Text</p></body></html>`

/** Folders that printing has left behind. */
const leftOver = () => readdirSync(tmpdir()).filter((name) => name.startsWith('pitfolio-print-'))

testWith('chromium', 'pdftoppm')(
  'a page printed by Chromium is a tagged PDF with its title and without head and foot of the browser',
  async () => {
    const before = leftOver()
    const browser = await findBrowser({searchPath: process.env.PATH ?? ''})
    const printed = await printPages(browser ?? '', new Map([['a.html', page('Beetles of the wood')]]))
    if ('reason' in printed) throw new Error(printed.reason)
    expect([...printed.keys()]).toEqual(['a.pdf'])
    const file = join(temporaryFolder(), 'a.pdf')
    writeFileSync(file, printed.get('a.pdf') ?? '')
    const told = spawnSync('pdfinfo', [file], {encoding: 'utf8'}).stdout
    expect(told).toMatch(/^Tagged: +yes$/m)
    expect(told).toMatch(/^Title: +Beetles of the wood$/m)
    expect(spawnSync('pdftotext', [file, '-'], {encoding: 'utf8'}).stdout.trim().split(/\n+/)).toEqual([
      'Beetles of the wood',
      'Text'
    ])
    expect(leftOver()).toEqual(before)
  },
  120_000
)

test('every page is printed, each under its own name', async () => {
  const printed = await printPages(
    fakeBrowser(printing),
    new Map([
      ['a.html', 'A'],
      ['b.html', 'B']
    ])
  )
  expect(printed).toEqual(
    new Map([
      ['a.pdf', Buffer.from('%PDF-A')],
      ['b.pdf', Buffer.from('%PDF-B')]
    ])
  )
})

test('a browser gets no network and a profile of its own', async () => {
  const printed = await printPages(fakeBrowser('printf "%%PDF-%s" "$*" > "$pdf"'), new Map([['a.html', '']]))
  const words = 'reason' in printed ? '' : String(printed.get('a.pdf'))
  expect(words).toContain('--host-resolver-rules=MAP * ~NOTFOUND')
  expect(words).toMatch(/--user-data-dir=\S*pitfolio-print-\S+profile/)
  expect(words.includes('--no-sandbox')).toBe(process.getuid?.() === 0)
})

test.each([
  ['exec sleep 30', 'the browser did not finish within 1 seconds'],
  ['exit 3', 'the browser ended with code 3'],
  ['kill -9 $$', 'the browser ended with SIGKILL'],
  ['exit 0', 'the browser ended without making one'],
  ['echo sorry > "$pdf"', 'the browser ended without making one']
])('a browser that does `%s` is told of, and nothing is left behind', async (lines, reason) => {
  const before = leftOver()
  expect(await printPages(fakeBrowser(lines), new Map([['a.html', 'A']]), {timeoutMs: 1000})).toEqual({
    page: 'a.html',
    reason
  })
  expect(leftOver()).toEqual(before)
})

test('a browser that does not start is told of', async () => {
  const trouble = await printPages('/nowhere/chromium', new Map([['a.html', 'A']]))
  expect(trouble).toMatchObject({
    page: 'a.html',
    reason: expect.stringContaining('the browser did not start')
  })
})

test('the browser that is named is taken and no other; without a name the search path goes first', async () => {
  const named = fakeBrowser('exit 0')
  expect(await findBrowser({named, searchPath: '/usr/bin'})).toBe(named)
  expect(await findBrowser({named: '/nowhere/chromium', searchPath: '/usr/bin'})).toBeUndefined()
  const folder = dirname(fakeBrowser('exit 0'))
  writeFileSync(join(folder, 'chromium'), '', {mode: 0o755})
  expect(await findBrowser({searchPath: ['/nowhere', folder].join(delimiter)})).toBe(join(folder, 'chromium'))
})
