import type {SiteMapResult, SiteResult} from '../model/results.ts'
import {type LocalMetres, localMetres} from '../statistics/local-metres.ts'
import {counted, words} from './counted.ts'

type Published = Pick<SiteResult, 'id' | 'position'>

interface Placed {
  readonly site: string
  readonly latitude: number
  readonly longitude: number
  /** Degrees; 0 where the position is exact. */
  readonly precision: number
}

/**
 * The sites on a map. It is made of the positions as others may see them, not of the records, so that nothing in it
 * can tell more than they do.
 */
export function siteMap(sites: readonly Published[]): SiteMapResult {
  const placed = sites.flatMap(({id, position: {latitude, longitude, precision}}): Placed[] =>
    latitude === undefined || longitude === undefined
      ? []
      : [
          {
            site: id,
            latitude: Number(latitude),
            longitude: Number(longitude),
            precision: Number(precision ?? 0)
          }
        ]
  )
  const tooRough = placed.filter((place) => isTooRough(place, placed))
  const number = (label: string, shown: SiteResult['position']['shown']) =>
    counted(label, sites.filter(({position}) => position.shown === shown).length, words.sites)
  const whyNot = whyNoMap(sites, placed)
  const shown = placed.filter((place) => !tooRough.includes(place))
  return {
    sites: whyNot === undefined ? onMap(shown) : [],
    rounded: counted(
      'Sites on the map whose position is shown roughly',
      shown.filter(({precision}) => precision > 0).length,
      words.sites
    ),
    tooRough: counted(
      'Sites whose position is shown too roughly for the map of the others',
      tooRough.length,
      words.sites
    ),
    keptBack: number('Sites whose position is kept back', 'withheld'),
    notRecorded: number('Sites without a position on record', 'not recorded'),
    ...(whyNot !== undefined && {whyNot})
  }
}

function onMap(placed: readonly Placed[]): SiteMapResult['sites'] {
  const [origin] = placed
  if (origin === undefined) return []
  const latitudes = placed.map(({latitude}) => latitude)
  const middle = (Math.min(...latitudes) + Math.max(...latitudes)) / 2
  const metres = placed.map((place) => localMetres(place, origin, middle))
  const west = Math.min(...metres.map(({east}) => east))
  const south = Math.min(...metres.map(({north}) => north))
  return placed.map((place, index) => {
    const {east, north} = metres[index]!
    const {site, precision} = place
    return {
      site,
      eastM: Math.round(east - west),
      northM: Math.round(north - south),
      ...(precision > 0 && extentOf(precision, middle))
    }
  })
}

function extentOf(precision: number, trueAt: number): {widthM: number; heightM: number} {
  const corner: LocalMetres = localMetres(
    {latitude: precision, longitude: precision},
    {latitude: 0, longitude: 0},
    trueAt
  )
  return {widthM: Math.round(corner.east), heightM: Math.round(corner.north)}
}

/**
 * Whether a position is rounded to so large a square that all finer ones lie closer together than that: on the map of
 * those it could stand anywhere.
 */
function isTooRough({precision}: Placed, placed: readonly Placed[]): boolean {
  const finer = placed.filter((other) => other.precision < precision)
  if (!hasTwoPlaces(finer)) return false
  const span = (degrees: readonly number[]) => Math.max(...degrees) - Math.min(...degrees)
  return (
    span(finer.map(({latitude}) => latitude)) < precision &&
    span(finer.map(({longitude}) => longitude)) < precision
  )
}

function hasTwoPlaces(placed: readonly Placed[]): boolean {
  return new Set(placed.map(({latitude, longitude}) => `${latitude} ${longitude}`)).size > 1
}

/** Completes 'there is no map of the sites, because ...'; undefined where there is one. */
function whyNoMap(sites: readonly Published[], placed: readonly Placed[]): string | undefined {
  if (sites.length === 0) return 'the study has no site'
  const isRecorded = sites.some(({position}) => position.shown !== 'not recorded')
  if (!isRecorded) return 'the positions of the sites are not on record'
  if (sites.length === 1) return 'there is only one site'
  if (placed.length === 0) return 'the positions of the sites are kept back'
  if (placed.length === 1) return 'only one site has a position that may be shown'
  return hasTwoPlaces(placed) ? undefined : 'the positions, as exact as they may be shown, are all the same'
}
