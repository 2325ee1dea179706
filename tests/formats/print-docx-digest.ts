import {createHash} from 'node:crypto'
import {rasteriseSvg} from '../../src/svg/rasterise-svg.ts'
import {docxOf, everything, fontFiles, svg} from './docx-parts.ts'

/** Digest of a document with everything in it, its picture drawn afresh. */
export async function docxDigest(): Promise<string> {
  const bitmap = await rasteriseSvg(svg, {fontFiles, scale: 2.5})
  const bytes = await docxOf(everything, {bitmaps: new Map([['effort', bitmap]])})
  return createHash('sha256').update(bytes).digest('hex')
}

if (process.argv[1] === new URL(import.meta.url).pathname) console.log(await docxDigest())
