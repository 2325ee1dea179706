import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {shareCells, shareColumns} from './share-columns.ts'

export const sexes: TableDefinition = {
  name: 'sexes',
  summary: 'Females and males of every taxon whose sex is on record, with the share of females.',
  tables: ({results}) => {
    const ranks = new Map(results.taxa.map(({taxon, rank}) => [taxon, rank]))
    return [
      {
        name: 'sexes',
        columns: [
          wordColumn('Taxon'),
          numberColumn('Females'),
          numberColumn('Males'),
          numberColumn('Sex not recorded'),
          ...shareColumns(results, 'Share of females', '% of those known')
        ],
        rows: results.sexesAndStages.sexes.map(({taxon, females, males, undetermined, shareFemale}) => [
          cell.name({taxon, rank: ranks.get(taxon)}),
          cell.measure(females),
          cell.measure(males),
          cell.measure(undetermined),
          ...shareCells(shareFemale)
        ]),
        empty: 'No sex is on record.'
      }
    ]
  }
}
