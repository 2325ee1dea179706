import type {SiteResult} from '../model/results.ts'
import type {Settings} from '../model/settings.ts'
import type {CoordinatesShown, Site} from '../model/study.ts'

/** From the finest to the coarsest. */
const levels = ['exact', '0.001', '0.01', '0.1', 'none'] as const satisfies readonly CoordinatesShown[]

/**
 * The finest level for a sensitive taxon of category 1 (extreme) to 4 (low).
 *
 * Source: Chapman 2020, Current Best Practices for Generalizing Sensitive Species Occurrence Data,
 * doi 10.15468/doc-5jp4-5g10: generalise, do not randomise.
 */
const finestForCategory: Readonly<Record<number, CoordinatesShown>> = {
  1: 'none',
  2: '0.1',
  3: '0.01',
  4: '0.001'
}

/** The position of a site as others may see it. `category` is the strictest sensitivity among its taxa. */
export function sitePosition(
  site: Site,
  settings: Settings,
  category: number | undefined
): SiteResult['position'] {
  const {latitude, longitude} = site
  if (latitude === undefined || longitude === undefined) return {shown: 'not recorded'}
  const allowed = allowedLevel(site, settings)
  const finest = category === undefined ? 'exact' : (finestForCategory[category] ?? 'none')
  const coarsened = levels.indexOf(finest) > levels.indexOf(allowed.level)
  const level = coarsened ? finest : allowed.level
  if (level === 'exact') return {shown: 'exact', latitude: `${latitude}`, longitude: `${longitude}`}
  const because = coarsened ? 'kinds that need protection were recorded there' : allowed.because
  if (level === 'none') return {shown: 'withheld', because}
  return {
    shown: 'rounded',
    latitude: rounded(latitude, level),
    longitude: rounded(longitude, level),
    precision: level,
    because
  }
}

function allowedLevel(
  site: Site,
  {privacy}: Settings
): {readonly level: CoordinatesShown; readonly because: string} {
  if (site.coordinatesShown !== undefined)
    return {level: site.coordinatesShown, because: 'it was decided so for this site'}
  const stated = privacy?.coordinates
  if (stated !== undefined) {
    return {level: `${stated}` as CoordinatesShown, because: 'it was decided so for the whole study'}
  }
  return {level: '0.01', because: 'positions are shown to 0.01 degrees unless more was allowed'}
}

/** Degrees with exactly the decimals of the level. */
function rounded(degrees: number, level: CoordinatesShown): string {
  const text = degrees.toFixed(level.length - 2)
  return Number(text) === 0 ? text.replace('-', '') : text
}
