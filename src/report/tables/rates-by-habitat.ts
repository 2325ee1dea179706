import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {rateCells, rateColumns, rimCells, rimColumns} from './rate-columns.ts'

export const ratesByHabitat: TableDefinition = {
  name: 'rates-by-habitat',
  summary: 'Catch, effort and activity-density of each habitat.',
  tables: ({results}) => {
    const catches = [...results.habitats.map((habitat) => habitat.catch), results.catch]
    return [
      {
        name: 'rates-by-habitat',
        columns: [
          wordColumn('Habitat'),
          numberColumn('Sites'),
          numberColumn('Effort', 'trap-nights'),
          numberColumn('Caught', 'individuals'),
          numberColumn('Names'),
          ...rateColumns(results),
          ...rimColumns(catches)
        ],
        rows: results.habitats.map((habitat) => [
          cell.text(habitat.label),
          cell.measure(habitat.sites),
          cell.measure(habitat.effort.net),
          cell.measure(habitat.catch.individuals),
          cell.measure(habitat.catch.names),
          ...rateCells(habitat.catch),
          ...rimCells(catches, habitat.catch)
        ]),
        foot: [
          [
            cell.text('All habitats'),
            cell.measure(results.design.sites),
            cell.measure(results.effort.net),
            cell.measure(results.catch.individuals),
            cell.measure(results.catch.names),
            ...rateCells(results.catch),
            ...rimCells(catches, results.catch)
          ]
        ],
        empty: 'No habitat was sampled.'
      }
    ]
  }
}
