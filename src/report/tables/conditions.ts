import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const conditions: TableDefinition = {
  name: 'conditions',
  summary: 'Exposures by the state in which the trap was found, and what each state was credited.',
  tables: ({results}) => [
    {
      name: 'conditions',
      columns: [
        wordColumn('Condition'),
        wordColumn('Meaning'),
        wordColumn('Credit'),
        numberColumn('Exposures'),
        numberColumn('Exposed', 'trap-nights'),
        numberColumn('Achieved', 'trap-nights')
      ],
      rows: results.protocol.conditions.map(({condition, meaning, credit, exposures, exposed, net}) => [
        cell.text(condition),
        cell.text(meaning),
        cell.text(credit),
        cell.measure(exposures),
        cell.measure(exposed),
        cell.measure(net)
      ]),
      foot: [
        [
          cell.text('All exposures'),
          cell.blank,
          cell.blank,
          cell.measure(results.effort.exposures),
          cell.measure(results.effort.exposed),
          cell.measure(results.effort.net)
        ]
      ],
      empty: 'No exposure is on record.'
    }
  ]
}
