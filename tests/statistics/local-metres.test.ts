import fc from 'fast-check'
import {expect, test} from 'vitest'
import {greatCircleDistance} from '../../src/statistics/great-circle-distance.ts'
import {localMetres} from '../../src/statistics/local-metres.ts'

test('distances on the map are those along the sphere, for two places within a few kilometres', () => {
  const degrees = (low: number, high: number) => fc.double({min: low, max: high, noNaN: true})
  fc.assert(
    fc.property(
      degrees(-65, 65),
      degrees(-180, 180),
      degrees(-0.03, 0.03),
      degrees(-0.03, 0.03),
      (latitude, longitude, north, east) => {
        const origin = {latitude, longitude}
        const position = {latitude: latitude + north, longitude: longitude + east}
        const map = localMetres(position, origin, latitude + north / 2)
        const sphere = greatCircleDistance(position, origin)
        expect(Math.abs(Math.hypot(map.east, map.north) - sphere)).toBeLessThanOrEqual(0.002 * sphere + 1e-6)
        if (Math.abs(north) > 1e-9) expect(Math.sign(map.north)).toBe(Math.sign(north))
        if (Math.abs(east) > 1e-9) expect(Math.sign(map.east)).toBe(Math.sign(east))
      }
    )
  )
})
