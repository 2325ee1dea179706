import {caughtSome} from '../../model/withheld-taxa.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {noteColumn, numberColumn, wordColumn} from './column.ts'
import {habitatCells} from './habitat-cells.ts'

export const taxaByHabitat: TableDefinition = {
  name: 'taxa-by-habitat',
  summary:
    'Every taxon with its catch in each habitat, its share, the sites it was caught at, sexes and immatures.',
  tables: ({results}) => {
    const cells = habitatCells(results, ({individuals}) => individuals)
    const outside = caughtSome(results.catch.outsideEffort)
    const families = results.taxa.some(({family}) => family !== undefined)
    // Where the study describes its names at all, one that it does not describe may be a slip of the pen.
    const undescribed =
      results.taxa.some((taxon) => taxon.inTaxaTable) && results.taxa.some((taxon) => !taxon.inTaxaTable)
    // No sex at all on record means that nobody looked, and not that there were no females.
    const sexes = results.taxa.some(({females, males}) => caughtSome(females) || caughtSome(males))
    return [
      {
        name: 'taxa-by-habitat',
        columns: [
          wordColumn('Taxon'),
          ...(undescribed ? [noteColumn('Name')] : []),
          ...(families ? [wordColumn('Family')] : []),
          ...results.habitats.map(({label}) => numberColumn(label)),
          ...(outside ? [numberColumn('Outside the effort')] : []),
          numberColumn('Total'),
          numberColumn('Share'),
          numberColumn('Sites'),
          ...(sexes ? [numberColumn('Females'), numberColumn('Males')] : []),
          numberColumn('Immatures')
        ],
        rows: results.taxa.map((taxon) => [
          cell.taxon(taxon),
          ...(undescribed ? [cell.text(taxon.inTaxaTable ? undefined : 'not in the table of taxa')] : []),
          ...(families ? [cell.text(taxon.family)] : []),
          ...cells(taxon),
          ...(outside ? [cell.measure(taxon.outsideEffort)] : []),
          cell.measure(taxon.total),
          cell.measure(taxon.share),
          cell.measure(taxon.sites),
          ...(sexes ? [cell.measure(taxon.females), cell.measure(taxon.males)] : []),
          cell.measure(taxon.immatures)
        ]),
        foot: [
          [
            cell.text('All taxa'),
            ...(undescribed ? [cell.blank] : []),
            ...(families ? [cell.blank] : []),
            ...results.habitats.map((habitat) => cell.measure(habitat.catch.individuals)),
            ...(outside ? [cell.measure(results.catch.outsideEffort)] : []),
            cell.measure(results.catch.total),
            cell.blank,
            cell.measure(results.design.sites),
            ...(sexes ? [cell.blank, cell.blank] : []),
            cell.blank
          ]
        ],
        empty: 'Nothing was caught.'
      }
    ]
  }
}
