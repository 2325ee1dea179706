import {listWords} from '../model/list-words.ts'
import type {Results, SiteMapResult, SiteResult} from '../model/results.ts'
import {lengthWords} from './map-furniture.ts'
import {amountWords} from './measure-words.ts'
import {sentenceStart} from './sentence-start.ts'

export interface SiteOnMap {
  readonly site: SiteResult
  readonly place: SiteMapResult['sites'][number]
}

/** Of more sites than these, a list in words tells less than their number in each habitat. */
const mostTold = 24

/** The map of the sites in words, and what is not on it. */
export function siteMapWords(shown: readonly SiteOnMap[], {map, habitats}: Results): string {
  const left = [
    ...leftOff(map.keptBack, 'whose position is kept back'),
    ...leftOff(map.tooRough, 'whose position is shown too roughly for it'),
    ...leftOff(map.notRecorded, 'whose position is not on record')
  ]
  const missing = left.length === 0 ? [] : [`Not on the map: ${listWords(left)}.`]
  if (shown.length === 0) return [`There is no map, because ${map.whyNot}.`, ...missing].join(' ')
  const isTold = shown.length <= mostTold
  const places = shown.map(({place}) => place)
  const [east, north] = [places.map(({eastM}) => eastM), places.map(({northM}) => northM)].map((metres) =>
    lengthWords(roundedLength(Math.max(...metres) - Math.min(...metres)))
  )
  const each = habitats.flatMap(({id, label}) => {
    const own = shown.filter(({site}) => site.habitat === id).sort((a, b) => a.place.eastM - b.place.eastM)
    if (own.length === 0) return []
    if (!isTold) return [`${sentenceStart(label)}: ${own.length} of them.`]
    const told = own.map(
      ({site: {name, position}}) => `${name} (${position.latitude}, ${position.longitude})`
    )
    return [`${sentenceStart(label)}, from west to east: ${listWords(told)}.`]
  })
  return [
    `Map of ${shown.length} sites over ${east} from west to east and ${north} from south to north, as exactly as their positions are shown to others.`,
    ...(isTold ? ['In brackets stand latitude and longitude in degrees.'] : []),
    ...each,
    ...missing
  ].join(' ')
}

function leftOff(measure: SiteMapResult['keptBack'], why: string): readonly string[] {
  return 'value' in measure && measure.value > 0 ? [`${amountWords(measure, 'site', 'sites')} ${why}`] : []
}

/** To two significant figures, as good as a rounded position is. */
function roundedLength(metres: number): number {
  return metres < 1 ? 0 : Number(metres.toPrecision(2))
}
