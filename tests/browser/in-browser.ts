import {mkdirSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs'
import {tmpdir} from 'node:os'
import {dirname, join} from 'node:path'
import {type Browser, chromium, type Page} from 'playwright-core'

/** The flags keep the browser from asking after updates and the like, which is not the page's doing. */
const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run'
]

export interface View {
  readonly width?: number
  readonly media?: 'screen' | 'print'
  readonly colorScheme?: 'light' | 'dark'
}

/** A report in a folder, and one page of a browser that nothing but it is shown in. */
export interface InBrowser {
  readonly folder: string
  /** Shows a page of the report, and tells what it asked for besides itself. */
  show(name: string, view?: View): Promise<{readonly page: Page; readonly requests: readonly string[]}>
  /** Text of the page as it is without scripts. */
  withoutScripts(name: string): Promise<string | null>
  close(): Promise<void>
}

export async function inBrowser(outputs: ReadonlyMap<string, string | Uint8Array>): Promise<InBrowser> {
  const folder = mkdtempSync(join(tmpdir(), 'pitfolio-pages-'))
  for (const [path, content] of outputs) {
    mkdirSync(dirname(join(folder, path)), {recursive: true})
    writeFileSync(join(folder, path), content)
  }
  const browser: Browser = await chromium.launch({executablePath: '/usr/bin/chromium', args: quiet})
  // Scripts of the tests are let in past the page's own rule against scripts.
  const page = await browser.newPage({bypassCSP: true})
  const address = (name: string) => `file://${join(folder, `${name}.html`)}`
  const asked: string[] = []
  let bare: Page | undefined
  await page.route('**/*', (route) => {
    const url = route.request().url()
    if (url.startsWith('data:') || (url.startsWith('file:') && url.endsWith('.html'))) return route.continue()
    asked.push(url)
    return route.abort()
  })
  return {
    folder,
    async show(name, {width = 1280, media = 'screen', colorScheme = 'light'} = {}) {
      asked.length = 0
      await page.setViewportSize({width, height: 900})
      await page.emulateMedia({media, colorScheme})
      await page.goto(address(name))
      return {page, requests: [...asked]}
    },
    async withoutScripts(name) {
      bare ??= await browser.newPage({javaScriptEnabled: false})
      await bare.goto(address(name))
      return bare.locator('body').textContent()
    },
    async close() {
      await browser.close()
      rmSync(folder, {recursive: true, force: true})
    }
  }
}
