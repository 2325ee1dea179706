import {listWords} from '../model/list-words.ts'
import type {SiteResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {equalScaleFrame} from './equal-scale-frame.ts'
import {lengthWords, mapFurniture} from './map-furniture.ts'
import {mapLayers} from './map-layers.ts'
import {spreadSymbols} from './spread-symbols.ts'

/** How the traps of each site stood to one another: small, for one column of a page. */
export const trapLayout: Chart = {
  name: 'trap-layout',
  summary: 'How the traps of a site stood to one another; one picture for each site.',
  figures: ({sites}) => sites.map(figure)
}

const size = {width: 300, leastHeight: 64, mostHeight: 180, margin: 26}
const mostTold = 24

function figure({id, name: site, style, layout}: SiteResult): Figure {
  const {traps, whyNot} = layout
  const name = shortNames(
    id,
    traps.map((trap) => trap.id)
  )
  const base = {
    name: `trap-layout-${layout.name}`,
    title: `How the traps stood at ${site}`,
    alternative: alternative(site, layout, name),
    data: {
      columns: ['trap_id', 'east_m', 'north_m'],
      rows: traps.map((trap) => [trap.id, trap.eastM, trap.northM])
    }
  }
  if (whyNot !== undefined) return {...base, notDrawn: whyNot}
  const frame = equalScaleFrame(
    traps.map(({eastM, northM}) => ({x: eastM, y: northM})),
    size
  )
  const at = spreadSymbols(traps.map(({eastM, northM}) => frame.toPixel(eastM, northM)))
  const points = traps.map((trap, index) => ({name: name(trap.id), style, at: at[index]!}))
  const {layers} = mapLayers(points, frame)
  return {
    ...base,
    spec: {width: frame.width, height: frame.height, layer: [...mapFurniture(frame), ...layers]}
  }
}

/** Names of traps without what all of them share: `OAK1-3` at OAK1 is `3` there. */
function shortNames(site: string, traps: readonly string[]): (trap: string) => string {
  const rest = (trap: string) => trap.slice(site.length).replace(/^[\s_.:/-]+/, '')
  const share = traps.every((trap) => trap.startsWith(site) && rest(trap) !== '')
  return share && new Set(traps.map(rest)).size === traps.length ? rest : (trap) => trap
}

function alternative(site: string, {traps, whyNot}: SiteResult['layout'], name: (trap: string) => string) {
  if (whyNot !== undefined) return `How the traps stood at ${site} is not drawn, because ${whyNot}.`
  const [east, north] = [traps.map(({eastM}) => eastM), traps.map(({northM}) => northM)].map((metres) =>
    lengthWords(Math.max(...metres))
  )
  const said = `Drawing of ${traps.length} traps at ${site} seen from above, over ${east} from west to east and ${north} from south to north.`
  if (traps.length > mostTold) return said
  const each = traps.map((trap) => `${name(trap.id)} at ${trap.eastM} and ${trap.northM}`)
  return `${said} Metres east and north of the south-western corner, trap by trap: ${listWords(each)}.`
}
