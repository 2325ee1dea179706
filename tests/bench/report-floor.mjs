// The floor of a report: start, load the two chart libraries, draw the same specifications; then the same bitmaps.
import {readFileSync} from 'node:fs'

const {figures, bitmaps, fontFiles} = JSON.parse(readFileSync(process.argv[2], 'utf8'))
const start = performance.now()
const [vega, vegaLite] = await Promise.all([import('vega'), import('vega-lite')])
const pictures = new Map()
for (const {name, spec} of figures) {
  const view = new vega.View(vega.parse(vegaLite.compile(spec).spec), {renderer: 'none'})
  pictures.set(name, await view.toSVG())
  view.finalize()
}
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
// Node itself started before its clock did: timeOrigin is the start of the process.
console.log(
  JSON.stringify({
    drawing: drawn / 1000,
    rasterising: (performance.now() - drawn) / 1000,
    loadedAt: start / 1000
  })
)
