import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const listedTaxa: TableDefinition = {
  name: 'listed-taxa',
  summary: 'Names that are red-listed or protected by law.',
  tables: ({results}) => [
    {
      name: 'listed-taxa',
      columns: [
        wordColumn('Taxon'),
        wordColumn('Red list'),
        wordColumn('Protection by law'),
        numberColumn('Caught', 'individuals'),
        numberColumn('Sites')
      ],
      rows: results.taxa
        .filter(({redList, legalStatus}) => redList !== undefined || legalStatus !== undefined)
        .map((taxon) => [
          cell.taxon(taxon),
          cell.text(taxon.redList),
          cell.text(taxon.legalStatus),
          cell.measure(taxon.total),
          cell.measure(taxon.sites)
        ]),
      empty: 'No name that was caught is marked as red-listed or protected.'
    }
  ]
}
