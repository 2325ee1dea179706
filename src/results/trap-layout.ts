import type {SiteResult} from '../model/results.ts'
import {localMetres} from '../statistics/local-metres.ts'
import {counted, words} from './counted.ts'
import type {TrapInUse} from './study-area.ts'

type Layout = SiteResult['layout']

interface Place {
  readonly id: string
  readonly east: number
  readonly north: number
}

/**
 * How the traps of a site stood to one another. Metres paced out at the site are shown wherever the site lies, as
 * differences, so that a grid of the whole country in those columns gives no place away. Coordinates of traps serve
 * only where the position of the site may be shown exactly.
 *
 * @param name the site in the name of its picture
 */
export function trapLayout(
  traps: readonly TrapInUse[],
  {shown}: SiteResult['position'],
  name: string,
  where: string
): Layout {
  const paced = pacedPlaces(traps)
  const coordinates = coordinatePlaces(traps)
  const places = paced.length > 1 ? paced : shown === 'exact' ? coordinates : []
  const whyNot = whyNoDrawing(traps, places, coordinates)
  const drawn = whyNot === undefined ? places : []
  const west = Math.min(...drawn.map(({east}) => east))
  const south = Math.min(...drawn.map(({north}) => north))
  return {
    name,
    traps: drawn.map(({id, east, north}) => ({
      id,
      eastM: decimetres(east - west),
      northM: decimetres(north - south)
    })),
    notPlaced: counted(
      `Traps whose place at the site is not on record, ${where}`,
      traps.length - drawn.length,
      words.traps
    ),
    ...(whyNot !== undefined && {whyNot})
  }
}

function pacedPlaces(traps: readonly TrapInUse[]): readonly Place[] {
  return traps.flatMap(({id, record: {xM, yM}}) =>
    xM === undefined || yM === undefined ? [] : [{id, east: xM, north: yM}]
  )
}

function coordinatePlaces(traps: readonly TrapInUse[]): readonly Place[] {
  const placed = traps.flatMap(({id, record: {latitude, longitude}}) =>
    latitude === undefined || longitude === undefined ? [] : [{id, latitude, longitude}]
  )
  const [origin] = placed
  return placed.map(({id, ...position}) => ({id, ...localMetres(position, origin!, origin!.latitude)}))
}

/** Completes 'how the traps stood is not drawn, because ...'; undefined where it is. */
function whyNoDrawing(
  traps: readonly TrapInUse[],
  places: readonly Place[],
  coordinates: readonly Place[]
): string | undefined {
  if (traps.length === 1) return 'there was only one trap'
  if (places.length === 0 && coordinates.length > 1)
    return 'the places of the traps are known only on a map of the country, and the place of this site is not shown exactly'
  if (places.length < 2) return 'the place of each trap is not written down'
  const different = new Set(places.map(({east, north}) => `${decimetres(east)} ${decimetres(north)}`))
  return different.size === 1 ? 'all traps have the same place on record' : undefined
}

function decimetres(metres: number): number {
  return Math.round(metres * 10) / 10
}
