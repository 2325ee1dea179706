import {caughtSome} from '../../model/withheld-taxa.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {habitatCells} from './habitat-cells.ts'

export const outsideEffort: TableDefinition = {
  name: 'outside-effort',
  summary: 'Catch that no effort stands for: in the species list, not in the rates.',
  tables: ({results}) => {
    const cells = habitatCells(results, ({outsideEffort}) => outsideEffort)
    return [
      {
        name: 'outside-effort',
        columns: [
          wordColumn('Taxon'),
          ...results.habitats.map(({label}) => numberColumn(label)),
          numberColumn('Total')
        ],
        rows: results.taxa
          .filter((taxon) => caughtSome(taxon.outsideEffort))
          .map((taxon) => [cell.name(taxon), ...cells(taxon), cell.measure(taxon.outsideEffort)]),
        foot: [
          [
            cell.text('All taxa'),
            ...results.habitats.map((habitat) => cell.measure(habitat.catch.outsideEffort)),
            cell.measure(results.catch.outsideEffort)
          ]
        ],
        empty: 'Nothing was caught outside the effort.'
      }
    ]
  }
}
