import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

const orderNames = ['all species (q = 0)', 'common species (q = 1)', 'dominant species (q = 2)'] as const

export const partition: TableDefinition = {
  name: 'partition',
  summary: 'Diversity divided into alpha, beta and gamma, between habitats and between the sites of each.',
  tables: ({results}) =>
    results.scopes.map(({id, partitions}) => ({
      name: `partition-${id}`,
      columns: [
        wordColumn('Divided'),
        numberColumn('Units'),
        wordColumn('Order'),
        numberColumn('Alpha', 'effective species of a unit'),
        numberColumn('Beta', 'effective units'),
        numberColumn('Gamma', 'effective species of all')
      ],
      rows: partitions.flatMap(({label, units, orders}) =>
        orders.map(({order, alpha, beta, gamma}) => [
          cell.text(label),
          cell.measure(units),
          cell.text(orderNames[order]),
          cell.measure(alpha),
          cell.measure(beta),
          cell.measure(gamma)
        ])
      ),
      empty: 'There are no two units with catch to divide diversity between.'
    }))
}
