export interface Position {
  /** Decimal degrees north, -90 to 90. */
  readonly latitude: number
  /** Decimal degrees east, -180 to 180. */
  readonly longitude: number
}

/**
 * Mean radius of the Earth in metres, R1 of the Geodetic Reference System 1980 (Moritz 2000, J. Geod.
 * 74:128-133).
 */
const earthRadiusMetres = 6_371_008.7714

const radiansPerDegree = Math.PI / 180

/**
 * Distance in metres between two positions along the surface of a sphere of the Earth's mean radius.
 *
 * Formula: 2 R asin(sqrt(h)), h = sin^2(dlat/2) + cos(lat1) cos(lat2) sin^2(dlon/2), the haversine form,
 * which keeps its digits at the few metres between traps where the cosine form loses them.
 *
 * Source: Sinnott 1984, Sky and Telescope 68:159. Against the ellipsoid it errs by up to 0.6 %.
 *
 * Edge cases: the same position is 0 m apart; positions on either side of longitude 180 are near; opposite
 * points of the globe are half its circumference apart, and rounding cannot push h above 1.
 *
 * @example greatCircleDistance({latitude: 52, longitude: 1}, {latitude: 52, longitude: 1}) // => 0
 * @example Math.round(greatCircleDistance({latitude: 0, longitude: 0}, {latitude: 1, longitude: 0})) // => 111195
 * @example Math.round(greatCircleDistance({latitude: 0, longitude: 179.5}, {latitude: 0, longitude: -179.5})) // => 111195
 */
export function greatCircleDistance(from: Position, to: Position): number {
  const latitudeStep = Math.sin(((to.latitude - from.latitude) * radiansPerDegree) / 2)
  const longitudeStep = Math.sin(((to.longitude - from.longitude) * radiansPerDegree) / 2)
  const shrinking = Math.cos(from.latitude * radiansPerDegree) * Math.cos(to.latitude * radiansPerDegree)
  const haversine = latitudeStep ** 2 + shrinking * longitudeStep ** 2
  return 2 * earthRadiusMetres * Math.asin(Math.sqrt(Math.min(1, haversine)))
}
