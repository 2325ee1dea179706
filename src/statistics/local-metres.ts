import {greatCircleDistance, type Position} from './great-circle-distance.ts'

/** A place on a small map. */
export interface LocalMetres {
  readonly east: number
  readonly north: number
}

/**
 * How far a position lies east and north of an origin, in metres, on a flat map of a small area.
 *
 * Formula: equidistant cylindrical projection, true to scale along the parallel of `trueAt`: east = cos(trueAt) times
 * the difference of longitudes, north = the difference of latitudes, both as arcs of a sphere of the Earth's mean
 * radius.
 *
 * Source: Snyder 1987, Map Projections: A Working Manual, US Geological Survey Professional Paper 1395, section 12
 * (number of the section from memory).
 *
 * Edge cases: the origin lies at 0, 0; positions on either side of longitude 180 are near; distances from east to west
 * are the more wrong the further a position lies from the parallel of `trueAt`: by 0.2 % over 10 km at 60 degrees.
 *
 * @param trueAt degrees north of the parallel along which distances are true, the middle of the map.
 * @example localMetres({latitude: 52, longitude: 1}, {latitude: 52, longitude: 1}, 52) // => {east: 0, north: 0}
 * @example Math.round(localMetres({latitude: 1, longitude: 0}, {latitude: 0, longitude: 0}, 0).north) // => 111195
 * @example Math.round(localMetres({latitude: 60, longitude: -179}, {latitude: 60, longitude: 180}, 60).east) // => 55598
 */
export function localMetres(position: Position, origin: Position, trueAt: number): LocalMetres {
  const degreesEast = ((((position.longitude - origin.longitude + 180) % 360) + 360) % 360) - 180
  const degreesNorth = position.latitude - origin.latitude
  return {
    east: degreesEast * metresOfDegree * Math.cos((trueAt * Math.PI) / 180),
    north: degreesNorth * metresOfDegree
  }
}

const metresOfDegree = greatCircleDistance({latitude: 0, longitude: 0}, {latitude: 1, longitude: 0})
