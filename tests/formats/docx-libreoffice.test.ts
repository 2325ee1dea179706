import {execFile} from 'node:child_process'
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs'
import {tmpdir} from 'node:os'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {promisify} from 'node:util'
import {expect} from 'vitest'
import {rasteriseSvg} from '../../src/svg/rasterise-svg.ts'
import {exampleReport} from '../example-report.ts'
import {testWith} from '../needs.ts'
import {all, docxOf, everything, fontFiles, partsOf, svg, wordsIn} from './docx-parts.ts'

const run = promisify(execFile)

/** The document as LibreOffice has it in other formats, in a folder that is gone afterwards. */
async function opened<Told>(
  document: Uint8Array,
  formats: readonly string[],
  look: (folder: string) => Told | Promise<Told>
): Promise<Told> {
  const folder = mkdtempSync(join(tmpdir(), 'pitfolio-docx-'))
  try {
    writeFileSync(join(folder, 'a.docx'), document)
    // A profile of its own: another office that is open would take the file and print nothing.
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`
    for (const format of formats) {
      const words = [
        profile,
        '--headless',
        '--convert-to',
        format,
        '--outdir',
        folder,
        join(folder, 'a.docx')
      ]
      await run('soffice', words)
    }
    return await look(folder)
  } finally {
    rmSync(folder, {recursive: true, force: true})
  }
}

testWith('libreoffice')(
  'LibreOffice opens a document, prints it and finds what its fields refer to',
  async () => {
    const bitmap = await rasteriseSvg(svg, {fontFiles, scale: 2.5})
    const document = await docxOf(everything, {bitmaps: new Map([['effort', bitmap]])})
    await opened(document, ['pdf', 'txt:Text (encoded):UTF8'], (folder) => {
      expect(readFileSync(join(folder, 'a.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
      const text = readFileSync(join(folder, 'a.txt'), 'utf8')
      expect(text).toContain('see Figure 1 and Table 1.')
      expect(text).toContain('Figure 1 Effort of two habitats; compare Table 1.')
      expect(text).toContain('Table 2 Nothing.')
      expect(text).not.toMatch(/not found/i)
    })
  },
  120_000
)

testWith('libreoffice', 'pdftoppm')(
  'LibreOffice prints every row of every table of the chapter, whole and on one page',
  async () => {
    const chapter = (await exampleReport()).get('chapter.docx')
    if (!(chapter instanceof Uint8Array)) throw new Error('no chapter.docx')
    const bare = (text: string) => text.replace(/\s/g, '')
    const rows = all(partsOf(chapter).xml.get('word/document.xml')!, 'w:tr').map((row) => bare(wordsIn(row)))
    expect(rows.length).toBeGreaterThan(400)
    const pages = await opened(chapter, ['pdf'], async (folder) => {
      const {stdout} = await run('pdftotext', ['-raw', join(folder, 'a.pdf'), '-'], {maxBuffer: 2 ** 26})
      return stdout.split('\f').map(bare)
    })
    expect(rows.filter((row) => !pages.some((page) => page.includes(row)))).toEqual([])
  },
  240_000
)

testWith('libreoffice', 'pdftoppm')(
  'LibreOffice prints the site report of the longest list and the tallest drawing on two pages',
  async () => {
    const leaflet = (await exampleReport()).get('site-HAY2.docx')
    if (!(leaflet instanceof Uint8Array)) throw new Error('no site-HAY2.docx')
    const {stdout} = await opened(leaflet, ['pdf'], (folder) => run('pdfinfo', [join(folder, 'a.pdf')]))
    expect(/^Pages: +(\d+)$/m.exec(stdout)?.[1]).toBe('2')
  },
  120_000
)
