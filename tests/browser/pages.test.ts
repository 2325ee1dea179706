import {mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs'
import {createRequire} from 'node:module'
import {tmpdir} from 'node:os'
import {dirname, join} from 'node:path'
import {type Browser, chromium, type Page} from 'playwright-core'
import {afterAll, beforeAll, describe, expect} from 'vitest'
import {readAssets} from '../../src/files/read-assets.ts'
import {buildReport} from '../../src/pipeline.ts'
import {exampleStudy} from '../example-season/make-example.ts'
import {memorySource} from '../memory-source.ts'
import {has, testWith} from '../needs.ts'

/** One page of each kind, in a real browser, as a reader with any screen, any eyes and no network meets it. */
const pages = ['index', 'chapter', 'season', 'site-OAK3']
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

let browser: Browser
let folder: string

beforeAll(async () => {
  if (!has('chromium')) return
  const report = await buildReport(memorySource(exampleStudy()), await readAssets())
  if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
  folder = mkdtempSync(join(tmpdir(), 'pitfolio-pages-'))
  for (const [path, content] of report.outputs) {
    mkdirSync(dirname(join(folder, path)), {recursive: true})
    writeFileSync(join(folder, path), content)
  }
  // The flags keep the browser from asking after updates and the like, which is not the page's doing.
  const quiet = [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--no-first-run'
  ]
  browser = await chromium.launch({executablePath: '/usr/bin/chromium', args: quiet})
})

afterAll(async () => {
  await browser?.close()
  if (folder !== undefined) rmSync(folder, {recursive: true, force: true})
})

interface Opened {
  readonly page: Page
  readonly requests: readonly string[]
}

async function open(name: string, options: Parameters<Browser['newPage']>[0]): Promise<Opened> {
  const page = await browser.newPage(options)
  const requests: string[] = []
  page.on('request', (request) => requests.push(request.url()))
  await page.goto(`file://${join(folder, `${name}.html`)}`)
  return {page, requests}
}

describe.each(pages)('%s', (name) => {
  for (const width of [360, 1280]) {
    testWith('chromium')(`at ${width} px fits the screen sideways and asks nothing of anybody`, async () => {
      const {page, requests} = await open(name, {viewport: {width, height: 900}})
      const overflow = await page.evaluate(
        'document.documentElement.scrollWidth - document.documentElement.clientWidth'
      )
      await page.close()
      expect(overflow).toBe(0)
      expect(requests.filter((url) => !url.startsWith('data:')).map((url) => url.split('/').at(-1))).toEqual([
        `${name}.html`
      ])
    })
  }

  for (const colorScheme of ['light', 'dark'] as const) {
    testWith('chromium')(`has no fault that axe can find at WCAG 2.2 AA, ${colorScheme}`, async () => {
      const {page} = await open(name, {viewport: {width: 1280, height: 900}, colorScheme, bypassCSP: true})
      await page.evaluate(axe)
      const found = (await page.evaluate(
        `axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']}).then(({violations}) => violations.map(({id, nodes}) => id + ' ' + nodes[0].html))`
      )) as string[]
      await page.close()
      expect(found).toEqual([])
    })
  }

  testWith('chromium')('says the same without scripts', async () => {
    const text = async (javaScriptEnabled: boolean): Promise<string | null> => {
      const {page} = await open(name, {javaScriptEnabled})
      const words = await page.locator('main').textContent()
      await page.close()
      return words
    }
    expect(await text(false)).toBe(await text(true))
  })

  testWith('chromium')('has no text in a chart that is cut off or lies on other text', async () => {
    const {page} = await open(name, {viewport: {width: 1280, height: 900}})
    const overlapping = await page.evaluate(`[...document.querySelectorAll('figure svg')].flatMap((svg) => {
      const frame = svg.getBoundingClientRect()
      const texts = [...svg.querySelectorAll('text')].filter((text) => text.textContent.trim() !== '')
      const boxes = texts.map((text) => ({words: text.textContent, box: text.getBoundingClientRect()}))
      const within = ({box}) => box.left >= frame.left - 1 && box.right <= frame.right + 1 && box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1
      const apart = (a, b) => a.right <= b.left + 1 || b.right <= a.left + 1 || a.bottom <= b.top + 3 || b.bottom <= a.top + 3
      const cut = boxes.filter((one) => !within(one)).map(({words}) => 'cut: ' + words)
      const over = boxes.flatMap((one, index) => boxes.slice(index + 1).filter((other) => !apart(one.box, other.box)).map((other) => one.words + ' / ' + other.words))
      return [...cut, ...over]
    })`)
    await page.close()
    expect(overlapping).toEqual([])
  })
})
