const semiMajorAxis = 6_378_137
const flattening = 1 / 298.257_223_563
const radians = Math.PI / 180

/**
 * Metres by which a position may be off because its coordinates were rounded, rounded up: the diagonal of a cell of
 * the grid on the WGS84 ellipsoid. The nearest value is off by half of that at most; the published figure is the
 * whole, which is safe.
 *
 * Source: Chapman & Wieczorek 2020, Georeferencing Best Practices, doi 10.15468/doc-gg7h-s853, table 3.
 *
 * @param latitude degrees north.
 * @param precision size of the grid in degrees.
 */
export function roundingUncertainty(latitude: number, precision: number): number {
  const eccentricity = flattening * (2 - flattening)
  const sine = Math.sin(latitude * radians)
  const root = Math.sqrt(1 - eccentricity * sine * sine)
  const perDegreeEast = (radians * semiMajorAxis * Math.cos(latitude * radians)) / root
  const perDegreeNorth = (radians * semiMajorAxis * (1 - eccentricity)) / root ** 3
  return Math.ceil(precision * Math.sqrt(perDegreeEast ** 2 + perDegreeNorth ** 2))
}
