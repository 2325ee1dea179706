import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {comparisons, notCompared} from './comparisons.ts'
import {standardError} from './standard-error.ts'

export const coefficients: TableDefinition = {
  name: 'coefficients',
  summary: 'Coefficients of the models of activity-density, on the scale of natural logarithms.',
  tables: ({results}) => [
    {
      name: 'coefficients',
      columns: [
        wordColumn('Group'),
        wordColumn('Model'),
        wordColumn('Term'),
        numberColumn('Estimate', 'natural logarithm'),
        numberColumn('Standard error', 'theta taken as known')
      ],
      rows: comparisons(results).flatMap(({of, method, coefficients: terms}) =>
        terms.map(({term, estimate}) => [
          cell.text(of),
          cell.text(method),
          cell.text(term),
          cell.measure(estimate),
          cell.measure(standardError(estimate))
        ])
      ),
      empty: notCompared(results.comparison)
    }
  ]
}
