import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {confidenceWords, rateUnit} from './rate-columns.ts'

export const sensitivity: TableDefinition = {
  name: 'sensitivity',
  summary: 'Activity-density of each habitat under other rules for failed traps.',
  tables: ({results}) => [
    {
      name: 'sensitivity',
      columns: [
        wordColumn('Habitat'),
        wordColumn('Rule for failed traps'),
        numberColumn('Effort', 'trap-nights'),
        numberColumn('Caught', 'individuals'),
        numberColumn('Activity-density', rateUnit),
        numberColumn('Interval', confidenceWords(results))
      ],
      rows: results.habitats.flatMap((habitat) =>
        results.sensitivity.variants.flatMap((variant) =>
          variant.habitats
            .filter(({id}) => id === habitat.id)
            .map(({net, individuals, rate}) => [
              cell.text(habitat.label),
              cell.text(variant.label),
              cell.measure(net),
              cell.measure(individuals),
              cell.measure(rate),
              cell.interval(rate)
            ])
        )
      ),
      empty: 'No other rule was tried.'
    }
  ]
}
