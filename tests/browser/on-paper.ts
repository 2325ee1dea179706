import {execFileSync} from 'node:child_process'

export interface PrintedPage {
  readonly widthMm: number
  readonly heightMm: number
  readonly text: string
}

/** The pages of a PDF with their text, by the tools of poppler. */
export function printedPages(pdf: string): readonly PrintedPage[] {
  const info = execFileSync('pdfinfo', ['-l', '999', pdf], {encoding: 'utf8'})
  const sizes = [...info.matchAll(/^Page +\d+ size: +([\d.]+) x ([\d.]+) pts/gm)]
  const texts = execFileSync('pdftotext', ['-raw', pdf, '-'], {encoding: 'utf8', maxBuffer: 2 ** 26}).split(
    '\f'
  )
  return sizes.map(([, width, height], index) => ({
    widthMm: millimetres(width),
    heightMm: millimetres(height),
    text: texts[index] ?? ''
  }))
}

/** Pairs of signs (`markForPaper`) that came to stand on different pages. */
export function cutPairs(
  pairs: readonly {readonly kind: string; readonly words: string}[],
  pages: readonly PrintedPage[]
): readonly string[] {
  const places = new Map<string, number>()
  for (const [index, {text}] of pages.entries()) {
    for (const [, sign = ''] of text.replace(/\s/g, '').matchAll(/§([az]\d+)§/g)) places.set(sign, index + 1)
  }
  return pairs.flatMap(({kind, words}, number) => {
    const [from, to] = [places.get(`a${number}`), places.get(`z${number}`)]
    return from !== undefined && from === to ? [] : [`${kind} on pages ${from} and ${to}: ${words}`]
  })
}

function millimetres(points: string | undefined): number {
  return Math.round((Number(points) * 25.4) / 72)
}
