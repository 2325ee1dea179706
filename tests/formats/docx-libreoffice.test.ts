import {execFile} from 'node:child_process'
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs'
import {tmpdir} from 'node:os'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {promisify} from 'node:util'
import {expect} from 'vitest'
import {rasteriseSvg} from '../../src/svg/rasterise-svg.ts'
import {testWith} from '../needs.ts'
import {docxOf, everything, fontFiles, svg} from './docx-parts.ts'

const run = promisify(execFile)

testWith('libreoffice')(
  'LibreOffice opens a document, prints it and finds what its fields refer to',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'pitfolio-docx-'))
    try {
      const bitmap = await rasteriseSvg(svg, {fontFiles, scale: 2.5})
      writeFileSync(
        join(folder, 'a.docx'),
        await docxOf(everything, {bitmaps: new Map([['effort', bitmap]])})
      )
      // A profile of its own: another office that is open would take the file and print nothing.
      const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`
      for (const format of ['pdf', 'txt:Text (encoded):UTF8'])
        await run('soffice', [
          profile,
          '--headless',
          '--convert-to',
          format,
          '--outdir',
          folder,
          join(folder, 'a.docx')
        ])
      expect(readFileSync(join(folder, 'a.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
      const text = readFileSync(join(folder, 'a.txt'), 'utf8')
      expect(text).toContain('see Figure 1 and Table 1.')
      expect(text).toContain('Figure 1 Effort of two habitats; compare Table 1.')
      expect(text).toContain('Table 2 Nothing.')
      expect(text).not.toMatch(/not found/i)
    } finally {
      rmSync(folder, {recursive: true, force: true})
    }
  },
  120_000
)
