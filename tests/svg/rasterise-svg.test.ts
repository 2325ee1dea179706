import {fileURLToPath} from 'node:url'
import {expect, test} from 'vitest'
import {rasteriseSvg} from '../../src/svg/rasterise-svg.ts'

const fonts = new URL('../../templates/fonts/', import.meta.url)
const fontFiles = ['Regular', 'Bold', 'Italic', 'BoldItalic'].map((cut) =>
  fileURLToPath(new URL(`LiberationSans-${cut}.ttf`, fonts))
)
const picture = (style: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="120" height="40" viewBox="0 0 120 40"><text x="9" y="20" font-family="Arial, Helvetica, Liberation Sans, sans-serif" ${style}>Carabus 12</text></svg>`

test('a picture becomes a PNG of the size that the scale asks for', async () => {
  const png = await rasteriseSvg(picture(''), {fontFiles, scale: 2.5})
  const view = new DataView(png.buffer, png.byteOffset)
  expect([...png.subarray(1, 4)].map((code) => String.fromCharCode(code)).join('')).toBe('PNG')
  expect([view.getUint32(16), view.getUint32(20)]).toEqual([300, 100])
})

test('the four cuts of the font are told apart, and the fonts of the machine play no part', async () => {
  const styles = ['', 'font-weight="bold"', 'font-style="italic"', 'font-weight="bold" font-style="italic"']
  const drawn = await Promise.all(styles.map((style) => rasteriseSvg(picture(style), {fontFiles, scale: 1})))
  expect(new Set(drawn.map((png) => String(png))).size).toBe(4)
  const bare = await rasteriseSvg(picture(''), {fontFiles: [], scale: 1})
  const blank = await rasteriseSvg(picture('visibility="hidden"'), {fontFiles, scale: 1})
  expect(bare).toEqual(blank)
})

test('the same picture has the same bytes', async () => {
  const [first, second] = await Promise.all(
    [1, 2].map(() => rasteriseSvg(picture(''), {fontFiles, scale: 2}))
  )
  expect(second).toEqual(first)
})

test('what is no SVG is an error', async () => {
  await expect(rasteriseSvg('<p>no</p>', {fontFiles, scale: 1})).rejects.toThrow()
})
