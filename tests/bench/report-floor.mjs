// The floor of a report: start, load the two chart libraries, draw the same specifications. With a second argument
// the same bitmaps too, which are timed here.
import {readFileSync} from 'node:fs'

const [input, bitmapsToo] = process.argv.slice(2)
const {figures, bitmaps, fontFiles} = JSON.parse(readFileSync(input, 'utf8'))
const [vega, vegaLite] = await Promise.all([import('vega'), import('vega-lite')])
const pictures = new Map()
for (const {name, spec} of figures) {
  const view = new vega.View(vega.parse(vegaLite.compile(spec).spec), {renderer: 'none'})
  pictures.set(name, await view.toSVG())
  view.finalize()
}
if (bitmapsToo !== undefined) {
  const drawn = performance.now()
  const {renderAsync} = await import('@resvg/resvg-js')
  for (const name of bitmaps) {
    const font = {loadSystemFonts: false, fontFiles, defaultFontFamily: 'Liberation Sans'}
    const image = await renderAsync(pictures.get(name), {
      font,
      fitTo: {mode: 'zoom', value: 2.5},
      background: '#ffffff'
    })
    image.asPng()
  }
  console.log((performance.now() - drawn) / 1000)
}
