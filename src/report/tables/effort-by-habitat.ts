import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {effortCells, effortColumns} from './effort-columns.ts'

export const effortByHabitat: TableDefinition = {
  name: 'effort-by-habitat',
  summary: 'Planned, achieved and lost trap-nights of each habitat.',
  tables: ({results}) => [
    {
      name: 'effort-by-habitat',
      columns: [wordColumn('Habitat'), numberColumn('Sites'), numberColumn('Traps'), ...effortColumns],
      rows: results.habitats.map((habitat) => [
        cell.text(habitat.label),
        cell.measure(habitat.sites),
        cell.measure(habitat.traps),
        ...effortCells(habitat.effort)
      ]),
      foot: [
        [
          cell.text('All habitats'),
          cell.measure(results.design.sites),
          cell.measure(results.design.traps),
          ...effortCells(results.effort)
        ]
      ],
      empty: 'No habitat was sampled.'
    }
  ]
}
