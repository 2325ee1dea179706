import type {Measure} from '../../model/quantity.ts'
import type {Results} from '../../model/results.ts'

/**
 * Names that were caught and are too sensitive to be tied to a place: no site lists them. No table may bring name
 * and site together again.
 */
export function withheldTaxa({sites, taxa}: Results): ReadonlySet<string> {
  const listed = new Set(sites.flatMap((site) => site.taxa.map(({taxon}) => taxon)))
  return new Set(
    taxa.filter(({taxon, total}) => caughtSome(total) && !listed.has(taxon)).map(({taxon}) => taxon)
  )
}

export function caughtSome(measure: Measure): boolean {
  return 'value' in measure && measure.value > 0
}
