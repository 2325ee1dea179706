import {mkdtemp, readFile, rm, writeFile} from 'node:fs/promises'
import {tmpdir} from 'node:os'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {runBrowser} from './run-browser.ts'

/** Why a page could not be printed, in words that complete 'no PDF, because ...'. */
export interface PrintTrouble {
  readonly page: string
  readonly reason: string
}

export interface PrintOptions {
  /** Longest time for one page. */
  readonly timeoutMs?: number
  readonly onPage?: (page: string) => void
}

const usualTimeoutMs = 120_000

/**
 * Pages that are complete in themselves, printed to tagged PDF (the default of Chromium) by an installed browser,
 * with an outline made of the headings. The browser reaches no network, and its profile is a new folder that goes
 * afterwards. All pages or none: a report with half of its PDFs would mislead.
 *
 * @param pages HTML by name, such as `chapter.html`.
 * @returns PDF by name, `chapter.pdf`, or the trouble with the first page that failed. The bytes differ from run to
 * run, for the browser writes the time into them.
 */
export async function printPages(
  browser: string,
  pages: ReadonlyMap<string, string>,
  {timeoutMs = usualTimeoutMs, onPage}: PrintOptions = {}
): Promise<ReadonlyMap<string, Uint8Array> | PrintTrouble> {
  const folder = await mkdtemp(join(tmpdir(), 'pitfolio-print-'))
  try {
    const printed = new Map<string, Uint8Array>()
    for (const [name, text] of pages) {
      onPage?.(name)
      const page = join(folder, 'page.html')
      const pdf = join(folder, 'page.pdf')
      await writeFile(page, text)
      await rm(pdf, {force: true})
      const trouble = await runBrowser(browser, printing(folder, pdf, page), timeoutMs)
      if (trouble !== undefined) return {page: name, reason: trouble}
      const bytes = await readFile(pdf).catch(() => undefined)
      if (bytes === undefined || bytes.subarray(0, 5).toString('latin1') !== '%PDF-')
        return {page: name, reason: 'the browser ended without making one'}
      printed.set(name.replace(/\.html$/, '.pdf'), bytes)
    }
    return printed
  } finally {
    // Processes of the browser may still be letting go of their files.
    await rm(folder, {recursive: true, force: true, maxRetries: 5, retryDelay: 200}).catch(() => {})
  }
}

function printing(folder: string, pdf: string, page: string): readonly string[] {
  // Chromium refuses its sandbox to the superuser; what is printed are our own pages, which hold no script.
  const isRoot = process.getuid?.() === 0
  return [
    '--headless',
    ...(isRoot ? ['--no-sandbox'] : []),
    '--disable-gpu',
    '--disable-dev-shm-usage',
    '--disable-extensions',
    '--disable-quic',
    '--disable-sync',
    '--disable-background-networking',
    '--disable-component-update',
    '--no-first-run',
    '--no-default-browser-check',
    '--host-resolver-rules=MAP * ~NOTFOUND',
    `--user-data-dir=${join(folder, 'profile')}`,
    '--no-pdf-header-footer',
    '--generate-pdf-document-outline',
    `--print-to-pdf=${pdf}`,
    pathToFileURL(page).href
  ]
}
