import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {comparisons, notCompared} from './comparisons.ts'

export const residuals: TableDefinition = {
  name: 'residuals',
  summary: 'Catch of each sampling unit in the rounds compared, what the model expects, and the residual.',
  tables: ({results}) => {
    const labels = new Map(results.habitats.map(({id, label}) => [id, label]))
    return [
      {
        name: 'residuals',
        columns: [
          wordColumn('Group'),
          wordColumn('Habitat'),
          wordColumn(results.comparison.unit === 'trap' ? 'Trap' : 'Site'),
          numberColumn('Effort', 'trap-nights'),
          numberColumn('Caught', 'individuals'),
          numberColumn('Expected', 'individuals'),
          numberColumn('Residual', 'Pearson')
        ],
        rows: comparisons(results).flatMap(({of, residuals: units}) =>
          units.map(({label, habitat, net, individuals, expected, residual}) => [
            cell.text(of),
            cell.text(labels.get(habitat)),
            cell.text(label),
            cell.measure(net),
            cell.measure(individuals),
            cell.measure(expected),
            cell.measure(residual)
          ])
        ),
        empty: notCompared(results.comparison)
      }
    ]
  }
}
