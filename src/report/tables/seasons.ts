import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {rateCells, rateColumns} from './rate-columns.ts'

export const seasons: TableDefinition = {
  name: 'seasons',
  summary: 'Activity-density of each habitat in each round.',
  tables: ({results}) => [
    {
      name: 'seasons',
      columns: [
        wordColumn('Round'),
        wordColumn('First opened'),
        wordColumn('Last collected'),
        wordColumn('Habitat'),
        numberColumn('Effort', 'trap-nights'),
        numberColumn('Caught', 'individuals'),
        ...rateColumns(results)
      ],
      rows: results.rounds.flatMap((round) =>
        round.habitats.map((habitat) => [
          cell.text(round.id),
          cell.date(round.firstOpened),
          cell.date(round.lastCollected),
          cell.text(habitat.label),
          cell.measure(habitat.effort.net),
          cell.measure(habitat.catch.individuals),
          ...rateCells(habitat.catch)
        ])
      ),
      foot: [
        [
          cell.text('All rounds'),
          cell.date(results.protocol.firstOpened),
          cell.date(results.protocol.lastCollected),
          cell.text('All habitats'),
          cell.measure(results.effort.net),
          cell.measure(results.catch.individuals),
          ...rateCells(results.catch)
        ]
      ],
      empty: 'No round is on record.'
    }
  ]
}
