import type {Site} from '../model/study.ts'
import {greatCircleDistance, type Position} from '../statistics/great-circle-distance.ts'
import {median} from '../statistics/median.ts'

export interface PlacedSite extends Position {
  readonly site: Site
}

export function placedSites(sites: readonly Site[]): readonly PlacedSite[] {
  return sites.flatMap((site) => {
    const {latitude, longitude} = site
    return latitude === undefined || longitude === undefined ? [] : [{site, latitude, longitude}]
  })
}

/** The middle of positions, which one that is wrong does not move: median latitude and median longitude. */
export function middleOf(positions: readonly Position[]): Position {
  const latitude = median(positions.map((position) => position.latitude))
  const longitude = median(positions.map((position) => position.longitude))
  return {
    latitude: 'value' in latitude ? latitude.value : 0,
    longitude: 'value' in longitude ? longitude.value : 0
  }
}

/**
 * Sites whose latitude and longitude seem to have changed places: far from the middle as they are, and ten times
 * nearer the other way round.
 */
export function swappedSites(placed: readonly PlacedSite[]): readonly PlacedSite[] {
  if (placed.length < 3) return []
  const middle = middleOf(placed)
  return placed.filter(({latitude, longitude}) => {
    if (Math.abs(longitude) > 90) return false
    const asWritten = greatCircleDistance({latitude, longitude}, middle)
    const swapped = greatCircleDistance({latitude: longitude, longitude: latitude}, middle)
    return asWritten > 50_000 && swapped * 10 < asWritten
  })
}
