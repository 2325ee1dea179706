import type {Settings} from '../../model/settings.ts'
import type {Site} from '../../model/study.ts'
import {sitePosition} from '../../results/site-position.ts'
import {roundingUncertainty} from './rounding-uncertainty.ts'

/** A position as others may see it, and what was done to it. */
export interface PublishedPlace {
  readonly shown: 'exact' | 'rounded' | 'withheld' | 'not recorded'
  /** Whether nothing stands against showing it as it is, be it recorded or not. */
  readonly mayBeExact: boolean
  /** Whether the nearest named place goes with the position: it is kept back, or kinds of category 1 or 2 were recorded. */
  readonly hidesLocality: boolean
  /** Decimal degrees, with the decimals that may be shown. */
  readonly latitude?: string
  readonly longitude?: string
  /** Size of the grid in degrees, where rounded. */
  readonly precision?: string
  /** Radius in metres that surely holds the place: the recorded one and what the rounding adds. */
  readonly uncertaintyM?: number
  /** Whether no uncertainty is on record, so that the usual one of a receiver was taken. */
  readonly uncertaintyAssumed: boolean
  /** Completes: it was generalised because ... */
  readonly because?: string
}

/**
 * What a receiver without a recorded accuracy is taken to be off by, since May 2000.
 * Source: Chapman & Wieczorek 2020, Georeferencing Best Practices, section on uncertainty of GPS.
 */
const receiverUncertaintyM = 30

/** The point of a site or trap as others may see it. `category` is the strictest sensitivity among the taxa of the site. */
export function publishedPlace(
  site: Site,
  point: {readonly latitude?: number; readonly longitude?: number},
  settings: Settings,
  category: number | undefined
): PublishedPlace {
  const {latitude: _latitude, longitude: _longitude, ...rest} = site
  const position = sitePosition({...rest, ...pointOf(point)}, settings, category)
  const recorded = site.coordinateUncertaintyM
  const known = recorded !== undefined && recorded > 0 ? recorded : undefined
  const shownOfFine = shownOfAny(rest, settings, category)
  const base = {
    shown: position.shown,
    mayBeExact: shownOfFine === 'exact',
    hidesLocality: shownOfFine === 'withheld' || (category !== undefined && category <= 2),
    ...(position.latitude !== undefined && {latitude: position.latitude}),
    ...(position.longitude !== undefined && {longitude: position.longitude}),
    ...(position.because !== undefined && {because: position.because})
  }
  if (position.shown === 'exact')
    return {...base, uncertaintyAssumed: false, ...(known !== undefined && {uncertaintyM: known})}
  if (position.shown !== 'rounded' || position.precision === undefined)
    return {...base, uncertaintyAssumed: false}
  // From the published latitude: the exact one could be worked out from a figure made with it.
  const added = roundingUncertainty(Number(position.latitude), Number(position.precision))
  return {
    ...base,
    precision: position.precision,
    uncertaintyM: Math.ceil((known ?? receiverUncertaintyM) + added),
    uncertaintyAssumed: known === undefined
  }
}

/** What would be shown of a point that has more decimals than any level shows. */
function shownOfAny(site: Site, settings: Settings, category: number | undefined): PublishedPlace['shown'] {
  return sitePosition({...site, latitude: 0.123_456, longitude: 0.123_456}, settings, category).shown
}

function pointOf({latitude, longitude}: {readonly latitude?: number; readonly longitude?: number}) {
  return latitude === undefined || longitude === undefined ? {} : {latitude, longitude}
}
