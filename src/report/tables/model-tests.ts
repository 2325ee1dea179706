import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {comparisons, notCompared} from './comparisons.ts'
import {permutationCells, permutationColumns} from './permutation-columns.ts'
import {standardError} from './standard-error.ts'

export const modelTests: TableDefinition = {
  name: 'model-tests',
  summary: 'Tests of a difference in activity-density between habitats, with the permutations behind each p.',
  tables: ({results}) => [
    {
      name: 'model-tests',
      columns: [
        wordColumn('Group'),
        wordColumn('Model'),
        numberColumn(results.comparison.unit === 'trap' ? 'Traps' : 'Sites'),
        numberColumn('Blocks'),
        numberColumn('Aggregation', 'theta'),
        numberColumn('Its standard error'),
        numberColumn('Statistic'),
        numberColumn('Degrees of freedom'),
        numberColumn('p', 'by permutation'),
        ...permutationColumns
      ],
      rows: comparisons(results)
        .filter(({method}) => method !== 'none')
        .map(({of, method, units, blocks, theta, test}) => [
          cell.text(of),
          cell.text(method),
          cell.measure(units),
          cell.measure(blocks),
          cell.measure(theta),
          cell.measure(standardError(theta)),
          cell.measure(test.statistic),
          cell.measure(test.degreesOfFreedom),
          cell.measure(test.p),
          ...permutationCells(test.permutations)
        ]),
      empty: notCompared(results.comparison)
    }
  ]
}
