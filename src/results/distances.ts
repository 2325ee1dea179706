import type {Measure} from '../model/quantity.ts'
import type {DesignResult, SiteResult} from '../model/results.ts'
import {greatCircleDistance} from '../statistics/great-circle-distance.ts'
import {median} from '../statistics/median.ts'
import type {SiteInUse} from './study-area.ts'

type Distances = Pick<DesignResult, 'nearestWithin' | 'nearestBetween' | 'nearestAny'>

const coarseMetres = 100

/**
 * Distances between nearest sites, from exact positions. Where others may not see every position exactly, the
 * distances are given to the nearest 100 m, so that they cannot give a position away.
 */
export function siteDistances(sites: readonly SiteInUse[], shown: readonly SiteResult[]): Distances {
  const placed = sites.flatMap((site) => {
    const {latitude, longitude} = site.record
    return latitude === undefined || longitude === undefined ? [] : [{site, latitude, longitude}]
  })
  const exact = shown.every(({position}) => position.shown === 'exact' || position.shown === 'not recorded')
  const nearest = (among: (other: SiteInUse, own: SiteInUse) => boolean): number[] => {
    return placed.flatMap((own) => {
      let least = Number.POSITIVE_INFINITY
      for (const other of placed) {
        if (other !== own && among(other.site, own.site))
          least = Math.min(least, greatCircleDistance(own, other))
      }
      return Number.isFinite(least) ? [least] : []
    })
  }
  const metres = (label: string, value: number | undefined, whyNot: string): Measure => {
    const what = exact ? label : `${label}, to the nearest ${coarseMetres} m`
    if (value === undefined) return {label: what, kind: 'metres', notDefined: whyNot}
    return {
      label: what,
      kind: 'metres',
      value: exact ? value : Math.round(value / coarseMetres) * coarseMetres
    }
  }
  const middle = (label: string, distances: readonly number[], whyNot: string) => {
    const half = median(distances)
    return metres(label, 'value' in half ? half.value : undefined, whyNot)
  }
  const any = nearest(() => true).sort((a, b) => a - b)
  const tooFew = 'fewer than two sites have a position on record'
  return {
    nearestWithin: middle(
      'Median distance of a site to the nearest one of its own habitat',
      nearest((other, own) => other.habitat === own.habitat),
      'no habitat has two sites with a position on record'
    ),
    nearestBetween: middle(
      'Median distance of a site to the nearest one of another habitat',
      nearest((other, own) => other.habitat !== own.habitat),
      'no two habitats have sites with a position on record'
    ),
    nearestAny: {
      smallest: metres('Smallest distance of a site to its nearest one', any[0], tooFew),
      largest: metres('Largest distance of a site to its nearest one', any.at(-1), tooFew)
    }
  }
}
