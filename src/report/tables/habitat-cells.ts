import type {Measure} from '../../model/quantity.ts'
import type {Results, TaxonResult} from '../../model/results.ts'
import {hiddenFromHabitats} from '../../model/withheld-taxa.ts'
import type {Cell} from '../table.ts'
import {cell} from './cell.ts'

type TaxonInHabitat = TaxonResult['habitats'][number]

/** One cell per habitat of a taxon, unless it may not be tied to habitats. */
export function habitatCells(
  results: Results,
  pick: (inHabitat: TaxonInHabitat) => Measure
): (taxon: TaxonResult) => readonly Cell[] {
  const hidden = hiddenFromHabitats(results)
  return (taxon) =>
    results.habitats.map(({id}) => {
      if (hidden.has(taxon.taxon)) return cell.text('withheld')
      const inHabitat = taxon.habitats.find((habitat) => habitat.id === id)
      return inHabitat === undefined ? cell.blank : cell.measure(pick(inHabitat))
    })
}
