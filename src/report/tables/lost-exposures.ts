import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const lostExposures: TableDefinition = {
  name: 'lost-exposures',
  summary: 'Every exposure that lost trap-nights, with the state of the trap and what became of the sample.',
  tables: ({results}) => [
    {
      name: 'lost-exposures',
      columns: [
        ...['Site', 'Trap', 'Opened', 'Collected', 'Found', 'Sample'].map(wordColumn),
        numberColumn('Exposed', 'trap-nights'),
        numberColumn('Achieved', 'trap-nights')
      ],
      rows: results.protocol.lostExposures.map(
        ({site, trap, opened, collected, condition, sample, exposed, net}) => [
          cell.text(site),
          cell.text(trap),
          cell.date(opened),
          cell.date(collected),
          cell.text(condition),
          cell.text(sample),
          cell.measure(exposed),
          cell.measure(net)
        ]
      ),
      empty: 'No exposure lost trap-nights.'
    }
  ]
}
