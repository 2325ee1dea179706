import {caughtSome} from '../../model/withheld-taxa.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {habitatCells} from './habitat-cells.ts'
import {rateUnit} from './rate-columns.ts'

export const taxonRates: TableDefinition = {
  name: 'taxon-rates',
  summary: 'Activity-density of every taxon in each habitat.',
  tables: ({results}) => {
    const cells = habitatCells(results, ({rate}) => rate)
    return [
      {
        name: 'taxon-rates',
        columns: [
          wordColumn('Taxon'),
          ...results.habitats.map(({label}) => numberColumn(label, rateUnit)),
          numberColumn('All habitats', rateUnit)
        ],
        rows: results.taxa
          .filter(({individuals}) => caughtSome(individuals))
          .map((taxon) => [cell.name(taxon), ...cells(taxon), cell.measure(taxon.rate)]),
        foot: [
          [
            cell.text('All taxa'),
            ...results.habitats.map((habitat) => cell.measure(habitat.catch.rate)),
            cell.measure(results.catch.rate)
          ]
        ],
        empty: 'Nothing was caught within the effort.'
      }
    ]
  }
}
