import {hiddenFromHabitats} from '../../model/withheld-taxa.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {shareCells, shareColumns} from './share-columns.ts'

export const sexesByHabitat: TableDefinition = {
  name: 'sexes-by-habitat',
  summary: 'Females and males of every taxon in each habitat, with the share of females.',
  tables: ({results}) => {
    const ranks = new Map(results.taxa.map(({taxon, rank}) => [taxon, rank]))
    const hidden = hiddenFromHabitats(results)
    return [
      {
        name: 'sexes-by-habitat',
        columns: [
          wordColumn('Taxon'),
          wordColumn('Habitat'),
          numberColumn('Females'),
          numberColumn('Males'),
          numberColumn('Sex not recorded'),
          ...shareColumns(results, 'Share of females', '% of those known')
        ],
        rows: results.sexesAndStages.sexes
          .filter(({taxon}) => !hidden.has(taxon))
          .flatMap(({taxon, habitats}) =>
            habitats.map(({label, females, males, undetermined, shareFemale}) => [
              cell.name({taxon, rank: ranks.get(taxon)}),
              cell.text(label),
              cell.measure(females),
              cell.measure(males),
              cell.measure(undetermined),
              ...shareCells(shareFemale)
            ])
          ),
        empty: 'No sex is on record.'
      }
    ]
  }
}
