import type {TableDefinition} from '../table.ts'
import {assemblages} from './assemblages.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {confidenceWords} from './rate-columns.ts'

export const hillNumbers: TableDefinition = {
  name: 'hill-numbers',
  summary: 'Effective numbers of species of each habitat, as caught and estimated, one table for each group.',
  tables: ({results}) =>
    results.scopes.map((scope) => ({
      name: `hill-numbers-${scope.id}`,
      columns: [
        wordColumn('Catch of'),
        numberColumn('n', 'individuals'),
        ...['q = 1', 'q = 2'].flatMap((order) => [
          numberColumn(`${order} observed`, 'species'),
          numberColumn(`${order} asymptotic`, 'species'),
          numberColumn(`Interval of ${order}`, confidenceWords(results))
        ])
      ],
      rows: assemblages(scope).map(({label, individuals, hill}) => [
        cell.text(label),
        cell.measure(individuals),
        ...[hill.q1, hill.q2].flatMap(({observed, asymptotic}) => [
          cell.measure(observed),
          cell.measure(asymptotic),
          cell.interval(asymptotic)
        ])
      ]),
      empty: 'There is no catch in this group.'
    }))
}
