import type {TableDefinition} from '../table.ts'
import {assemblages} from './assemblages.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {confidenceWords} from './rate-columns.ts'
import {standardError} from './standard-error.ts'

export const estimators: TableDefinition = {
  name: 'estimators',
  summary:
    'Every estimate of the number of species, with its form, its basis and whether it is a lower bound.',
  tables: ({results}) =>
    results.scopes.map((scope) => ({
      name: `estimators-${scope.id}`,
      columns: [
        wordColumn('Assemblage'),
        {...wordColumn('Estimator'), rowHead: true},
        wordColumn('Form'),
        wordColumn('Based on'),
        wordColumn('Kind'),
        numberColumn('Estimate', 'species'),
        numberColumn('Standard error'),
        numberColumn('Interval', confidenceWords(results))
      ],
      rows: assemblages(scope).flatMap(({label, estimators: list}) =>
        list.map(({estimator, variant, basedOn, kind, estimate}) => [
          cell.text(label),
          cell.text(estimator),
          cell.text(variant),
          cell.text(basedOn),
          cell.text(kind),
          cell.measure(estimate),
          cell.measure(standardError(estimate)),
          cell.interval(estimate)
        ])
      ),
      empty: 'There is no catch in this group.'
    }))
}
