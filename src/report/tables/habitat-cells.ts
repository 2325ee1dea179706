import type {Measure} from '../../model/quantity.ts'
import type {Results, TaxonResult} from '../../model/results.ts'
import type {Cell} from '../table.ts'
import {cell} from './cell.ts'
import {withheldTaxa} from './withheld-taxa.ts'

type TaxonInHabitat = TaxonResult['habitats'][number]

/**
 * One cell per habitat of a taxon. Where some habitat has a single site, naming the habitat names the site, so that
 * taxa too sensitive to be tied to a site are not tied to habitats either.
 */
export function habitatCells(
  results: Results,
  pick: (inHabitat: TaxonInHabitat) => Measure
): (taxon: TaxonResult) => readonly Cell[] {
  const hidden = results.design.singleSiteHabitats.length > 0 ? withheldTaxa(results) : new Set<string>()
  return (taxon) =>
    results.habitats.map(({id}) => {
      if (hidden.has(taxon.taxon)) return cell.text('withheld')
      const inHabitat = taxon.habitats.find((habitat) => habitat.id === id)
      return inHabitat === undefined ? cell.blank : cell.measure(pick(inHabitat))
    })
}
