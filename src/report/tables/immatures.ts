import {caughtSome} from '../../model/withheld-taxa.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const immatures: TableDefinition = {
  name: 'immatures',
  summary: 'Larvae, juveniles and other stages before the adult, apart from the adults.',
  tables: ({results}) => [
    {
      name: 'immatures',
      columns: [
        wordColumn('Taxon'),
        wordColumn('Family'),
        numberColumn('Immatures', 'individuals'),
        numberColumn('All stages', 'individuals')
      ],
      rows: results.taxa
        .filter((taxon) => caughtSome(taxon.immatures))
        .map((taxon) => [
          cell.name(taxon),
          cell.text(taxon.family),
          cell.measure(taxon.immatures),
          cell.measure(taxon.total)
        ]),
      empty: 'No larva, juvenile or other stage before the adult is on record.'
    }
  ]
}
