import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {effortCells, effortColumns} from './effort-columns.ts'

export const effortByTrap: TableDefinition = {
  name: 'effort-by-trap',
  summary: 'Planned, achieved and lost trap-nights of each trap, and its catch.',
  tables: ({results}) => {
    const siteNames = new Map(results.sites.map(({id, name}) => [id, name]))
    return [
      {
        name: 'effort-by-trap',
        columns: [
          wordColumn('Trap'),
          wordColumn('Site'),
          ...effortColumns,
          numberColumn('Caught', 'individuals')
        ],
        rows: results.traps.map((trap) => [
          cell.text(trap.id),
          cell.text(siteNames.get(trap.site) ?? trap.site),
          ...effortCells(trap.effort),
          cell.measure(trap.catch.individuals)
        ]),
        foot: [
          [
            cell.text('All traps'),
            cell.blank,
            ...effortCells(results.effort),
            cell.measure(results.catch.individuals)
          ]
        ],
        empty: 'No trap is on record.'
      }
    ]
  }
}
