import type {TableDefinition} from '../table.ts'
import {assemblages} from './assemblages.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const indices: TableDefinition = {
  name: 'indices',
  summary: 'Classical indices, for comparison with older work only.',
  tables: ({results}) =>
    results.scopes.map((scope) => ({
      name: `indices-${scope.id}`,
      columns: [
        wordColumn('Assemblage'),
        numberColumn('Shannon', 'natural logarithm'),
        numberColumn('Gini-Simpson', '1 less the sum of squared shares'),
        numberColumn('Pielou', 'Shannon by ln S'),
        numberColumn('Berger-Parker', 'share of the commonest')
      ],
      rows: assemblages(scope).map((of) => [
        cell.text(of.label),
        cell.measure(of.shannon),
        cell.measure(of.giniSimpson),
        cell.measure(of.pielou),
        cell.measure(of.bergerParker)
      ]),
      empty: 'There is no catch in this group.'
    }))
}
