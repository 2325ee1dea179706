import {readFileSync} from 'node:fs'
import {createRequire} from 'node:module'
import {join} from 'node:path'
import type {Page} from 'playwright-core'
import {afterAll, beforeAll, describe, expect} from 'vitest'
import {exampleReport} from '../example-report.ts'
import {has, testWith} from '../needs.ts'
import {type InBrowser, inBrowser, type View} from './in-browser.ts'
import {cutPairs, printedPages} from './on-paper.ts'
import {
  crowdedChartTexts,
  cutOff,
  faintChartTexts,
  focusedStop,
  markForPaper,
  markReachable,
  overflowSideways,
  unreachableBoxes
} from './page-scripts.ts'

/** Every page of the report on the example, in a real browser: any screen, any eyes, no network, and on paper. */
const sites = ['BAR', 'HAY', 'OAK'].flatMap((habitat) =>
  [1, 2, 3, 4].map((number) => `site-${habitat}${number}`)
)
const pages = ['index', 'chapter', 'season', ...sites]

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const levels = {type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']}

let report: InBrowser
let built: readonly string[]

beforeAll(async () => {
  if (!has('chromium')) return
  const outputs = await exampleReport()
  built = [...outputs.keys()].filter((name) => name.endsWith('.html'))
  report = await inBrowser(outputs)
})

afterAll(() => report?.close())

/** What axe finds at WCAG 2.2 AA, or by some rules alone. */
async function axeFaults(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  await page.evaluate(axe)
  const runOnly = rules === undefined ? levels : {type: 'rule', values: rules}
  return page.evaluate(
    `axe.run({resultTypes: ['violations'], selectors: false, preload: false, iframes: false, runOnly: ${JSON.stringify(runOnly)}})
      .then(({violations}) => violations.flatMap(({id, nodes}) => nodes.map(({html}) => id + ': ' + html.slice(0, 200))))`
  )
}

/** Faults of every page in turn, each with the name of its page. */
async function faultsOf(
  view: View,
  look: (page: Page, requests: readonly string[]) => Promise<readonly string[]>,
  names = pages
): Promise<readonly string[]> {
  const found: string[] = []
  for (const name of names) {
    const {page, requests} = await report.show(name, view)
    found.push(...(await look(page, requests)).map((fault) => `${name}: ${fault}`))
  }
  return found
}

testWith('chromium')('no page of the report is left out here', () => {
  expect([...built].sort()).toEqual(pages.map((name) => `${name}.html`).sort())
})

describe.each([360, 1280])('at %i px', (width) => {
  testWith('chromium')('every page asks nothing of anybody and fits the screen sideways', async () => {
    const faults = await faultsOf({width}, async (page, requests) => {
      const overflow = await page.evaluate(overflowSideways)
      const cut = (await page.evaluate(cutOff)) as readonly string[]
      const boxes = (await page.evaluate(unreachableBoxes)) as readonly string[]
      return [...requests, ...(overflow === 0 ? [] : [`${overflow} pixels too wide`]), ...cut, ...boxes]
    })
    expect(faults).toEqual([])
  })

  testWith('chromium')('no text in a chart is cut off or lies on other text', async () => {
    expect(await faultsOf({width}, (page) => page.evaluate(crowdedChartTexts))).toEqual([])
  })
})

describe('axe finds no fault at WCAG 2.2 AA', () => {
  testWith('chromium')('on a telephone', async () => {
    expect(await faultsOf({width: 360}, (page) => axeFaults(page))).toEqual([])
  })

  // What else axe looks at is the same on every screen.
  const looks = ['link-in-text-block', 'target-size', 'scrollable-region-focusable']
  testWith('chromium')('on a desk', async () => {
    expect(await faultsOf({width: 1280}, (page) => axeFaults(page, looks))).toEqual([])
  })

  testWith('chromium')('in the dark', async () => {
    const view: View = {width: 1280, colorScheme: 'dark'}
    expect(await faultsOf(view, (page) => axeFaults(page, ['color-contrast']))).toEqual([])
  })

  testWith('chromium')('on paper', async () => {
    expect(await faultsOf({media: 'print'}, (page) => axeFaults(page, ['color-contrast']))).toEqual([])
  })
})

testWith('chromium')('on paper no text in a chart is cut off or lies on other text either', async () => {
  expect(await faultsOf({media: 'print'}, (page) => page.evaluate(crowdedChartTexts))).toEqual([])
})

describe.each([
  ['in the light', {}],
  ['in the dark', {colorScheme: 'dark'}],
  ['on paper', {media: 'print'}],
  ['on paper, from a dark screen', {media: 'print', colorScheme: 'dark'}]
] satisfies [string, View][])('%s', (_, view) => {
  testWith('chromium')('every text in a chart stands out from its ground', async () => {
    expect(await faultsOf(view, (page) => page.evaluate(faintChartTexts))).toEqual([])
  })
})

testWith('chromium')('every page says the same without scripts', async () => {
  for (const name of pages) {
    const bare = await report.withoutScripts(name)
    const {page} = await report.show(name)
    expect([name, bare]).toEqual([name, await page.locator('body').textContent()])
    expect(bare?.length).toBeGreaterThan(3000)
  }
})

describe.each(pages)('with the keyboard alone, %s', (name) => {
  testWith('chromium')(
    'is gone through in its order: links, data behind charts, and boxes that scroll',
    async () => {
      const {page} = await report.show(name, {width: 360})
      const stops = (await page.evaluate(markReachable)) as number
      expect(stops).toBeGreaterThan(2)
      const met: unknown[] = []
      for (let stop = 0; stop < stops; stop += 1) {
        await page.keyboard.press('Tab')
        met.push(await page.evaluate(focusedStop))
      }
      expect(met).toEqual(Array.from({length: stops}, (_, stop) => String(stop)))
    }
  )
})

testWith('chromium')(
  'the data behind a chart open with a key, and a wide table moves with the arrows',
  async () => {
    const {page} = await report.show('index', {width: 360})
    const details = page.locator('details').first()
    await details.locator('summary').focus()
    await page.keyboard.press('Enter')
    expect(await details.getAttribute('open')).toBe('')
    await page.keyboard.press('Tab')
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Numbers (CSV)')
    await report.show('chapter', {width: 360})
    const box = page.locator('#table-taxa-by-habitat .scroll')
    await box.focus()
    for (let times = 0; times < 4; times += 1) await page.keyboard.press('ArrowRight')
    await expect
      .poll(() => page.evaluate("document.querySelector('#table-taxa-by-habitat .scroll').scrollLeft"))
      .toBeGreaterThan(40)
  }
)

describe('printed to PDF', () => {
  const tools = testWith('chromium', 'pdftoppm')

  const printed = async (name: string, marked: boolean) => {
    const {page} = await report.show(name, {media: 'print'})
    const pairs = marked ? ((await page.evaluate(markForPaper)) as {kind: string; words: string}[]) : []
    const path = join(report.folder, `${name}.pdf`)
    await page.pdf({path, preferCSSPageSize: true})
    return {pairs, pages: printedPages(path)}
  }

  tools('every site report has exactly two A4 pages', async () => {
    for (const name of sites) {
      const {pages: sheets} = await printed(name, false)
      const sizes = sheets.map(({widthMm, heightMm}) => `${widthMm} × ${heightMm}`)
      expect([name, ...sizes]).toEqual([name, '210 × 297', '210 × 297'])
    }
  })

  for (const name of ['index', 'chapter', 'season', 'site-OAK2', 'site-BAR3']) {
    tools(`${name} cuts no row and no figure, and leaves no heading or caption alone`, async () => {
      const {pairs, pages: sheets} = await printed(name, true)
      expect(pairs.length).toBeGreaterThan(5)
      expect(cutPairs(pairs, sheets)).toEqual([])
    })
  }

  tools('no page is laid sideways, and none but the last is nearly empty', async () => {
    for (const name of ['chapter', 'season']) {
      const {pages: sheets} = await printed(name, false)
      expect(sheets.filter(({widthMm}) => widthMm !== 210)).toEqual([])
      const short = sheets.slice(0, -1).filter(({text}) => text.length < 300)
      expect(short.map(({text}) => `${name}: ${text}`)).toEqual([])
    }
  })
})
