import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {rateCells, rateColumns} from './rate-columns.ts'

export const ratesByGroup: TableDefinition = {
  name: 'rates-by-group',
  summary: 'Catch and activity-density of each group of the study in each habitat.',
  tables: ({results}) => [
    {
      name: 'rates-by-group',
      columns: [
        wordColumn('Group'),
        wordColumn('Habitat'),
        numberColumn('Effort', 'trap-nights'),
        numberColumn('Caught', 'individuals'),
        numberColumn('Names'),
        ...rateColumns(results)
      ],
      rows: results.scopes.flatMap((scope) =>
        results.habitats.flatMap((habitat) =>
          habitat.groups
            .filter(({id}) => id === scope.id)
            .map((group) => [
              cell.text(group.label),
              cell.text(habitat.label),
              cell.measure(habitat.effort.net),
              cell.measure(group.catch.individuals),
              cell.measure(group.catch.names),
              ...rateCells(group.catch)
            ])
        )
      ),
      empty: 'The study names no groups of its own.'
    }
  ]
}
