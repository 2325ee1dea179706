import type {Measure} from './quantity.ts'
import type {Results} from './results.ts'

/** Stands in a list of a habitat for a name that may not be tied to it. */
export const nameWithheld = 'name withheld'

/**
 * Names that were caught and are too sensitive to be tied to a place: no site lists them. Nothing may bring name
 * and site together again.
 */
export function withheldTaxa({sites, taxa}: Pick<Results, 'sites' | 'taxa'>): ReadonlySet<string> {
  const listed = new Set(sites.flatMap((site) => site.taxa.map(({taxon}) => taxon)))
  return new Set(
    taxa.filter(({taxon, total}) => caughtSome(total) && !listed.has(taxon)).map(({taxon}) => taxon)
  )
}

/** The same names, where some habitat has a single site: to name the habitat is then to name the site. */
export function hiddenFromHabitats(results: Pick<Results, 'sites' | 'taxa' | 'design'>): ReadonlySet<string> {
  return results.design.singleSiteHabitats.length > 0 ? withheldTaxa(results) : new Set()
}

export function caughtSome(measure: Measure): boolean {
  return 'value' in measure && measure.value > 0
}
