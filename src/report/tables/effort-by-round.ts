import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'
import {effortCells, effortColumns} from './effort-columns.ts'

export const effortByRound: TableDefinition = {
  name: 'effort-by-round',
  summary: 'Dates and trap-nights of each round.',
  tables: ({results}) => [
    {
      name: 'effort-by-round',
      columns: [
        wordColumn('Round'),
        wordColumn('First opened'),
        wordColumn('Last collected'),
        ...effortColumns
      ],
      rows: results.rounds.map((round) => [
        cell.text(round.id),
        cell.date(round.firstOpened),
        cell.date(round.lastCollected),
        ...effortCells(round.effort)
      ]),
      foot: [
        [
          cell.text('All rounds'),
          cell.date(results.protocol.firstOpened),
          cell.date(results.protocol.lastCollected),
          ...effortCells(results.effort)
        ]
      ],
      empty: 'No round is on record.'
    }
  ]
}
