import {inkTones} from '../model/ink.ts'
import type {Results} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {type EqualScaleFrame, equalScaleFrame} from './equal-scale-frame.ts'
import {habitatKey} from './habitat-key.ts'
import {mapFurniture} from './map-furniture.ts'
import {mapLayers} from './map-layers.ts'
import {unnamedNotes} from './name-points.ts'
import {withNotes} from './notes.ts'
import {type PixelSpan, pixelMarks} from './pixel-marks.ts'
import {type SiteOnMap, siteMapWords} from './site-map-words.ts'
import {spreadSymbols} from './spread-symbols.ts'

/** Where the sites lie, as exactly as their positions may be shown. */
export const siteMap: Chart = {
  name: 'site-map',
  summary: 'Where the sites lie, as exactly as their positions may be shown.',
  figures: (results) => [figure(results)]
}

const size = {width: 440, leastHeight: 120, mostHeight: 330, margin: 34}
/** A square of fewer pixels is hidden by its symbol. */
const leastSquare = 16

function figure(results: Results): Figure {
  const {map, sites, habitats} = results
  const shown = map.sites.flatMap((place): SiteOnMap[] => {
    const site = sites.find(({id}) => id === place.site)
    return site === undefined ? [] : [{site, place}]
  })
  const base = {
    name: 'site-map',
    title: 'Where the sites lie',
    alternative: siteMapWords(shown, results),
    data: {
      columns: [
        'site_id',
        'site',
        'habitat_id',
        'habitat',
        'latitude',
        'longitude',
        'precision_degrees',
        'east_m',
        'north_m'
      ],
      rows: shown.map(({site, place}) => [
        site.id,
        site.name,
        site.habitat,
        site.habitatLabel,
        site.position.latitude ?? null,
        site.position.longitude ?? null,
        site.position.precision ?? null,
        place.eastM,
        place.northM
      ])
    }
  }
  if (map.whyNot !== undefined) return {...base, notDrawn: map.whyNot}
  const inUse = habitats.filter(({id}) => shown.some(({site}) => site.habitat === id))
  const frame = equalScaleFrame(shown.flatMap(cornersOf), size)
  const at = spreadSymbols(shown.map(({place: {eastM, northM}}) => frame.toPixel(eastM, northM)))
  const points = shown.map(({site: {name, style}}, index) => ({name, style, at: at[index]!}))
  const {layers, named} = mapLayers(points, frame)
  const picture = {
    width: frame.width,
    height: frame.height,
    layer: [squares(shown, frame), ...mapFurniture(frame), ...layers, ...habitatKey(inUse, frame.width + 24)]
  }
  return {...base, spec: withNotes(picture, unnamedNotes(named, shown.length), 0)}
}

function cornersOf({place: {eastM, northM, widthM = 0, heightM = 0}}: SiteOnMap) {
  return [-0.5, 0.5].map((half) => ({x: eastM + half * widthM, y: northM + half * heightM}))
}

/** The square within which a rounded position lies, once for all sites in it. */
function squares(shown: readonly SiteOnMap[], {toPixel}: EqualScaleFrame): Record<string, unknown> {
  const different = new Map<string, PixelSpan>()
  for (const one of shown) {
    const [low, high] = cornersOf(one).map(({x, y}) => toPixel(x, y))
    if (low === undefined || high === undefined || high.x - low.x < leastSquare) continue
    different.set(`${low.x} ${low.y} ${high.x}`, {x: low.x, y: low.y, x2: high.x, y2: high.y})
  }
  return pixelMarks('rect', [...different.values()], {
    filled: false,
    color: inkTones.muted.light,
    strokeWidth: 0.6,
    strokeDash: [2, 2]
  })
}
