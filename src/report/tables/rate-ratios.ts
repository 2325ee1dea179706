import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {comparisons, notCompared} from './comparisons.ts'
import {confidenceWords} from './rate-columns.ts'

/** The effect beside its test, and beside what a single site does to it: none of the three is read without the others. */
export const rateRatios: TableDefinition = {
  name: 'rate-ratios',
  summary:
    'Ratios of the activity-densities of each pair of habitats, and what the most influential site does to them.',
  tables: ({results}) => [
    {
      name: 'rate-ratios',
      columns: [
        wordColumn('Group'),
        wordColumn('Habitats'),
        numberColumn(results.comparison.unit === 'trap' ? 'Traps' : 'Sites'),
        numberColumn('Rate ratio'),
        numberColumn('Interval', `${confidenceWords(results)}, approximate`),
        numberColumn('Degrees of freedom'),
        numberColumn('p', 'Holm-adjusted'),
        wordColumn('Most influential'),
        numberColumn('Rate ratio without it')
      ],
      rows: comparisons(results).flatMap(({of, units, ratios}) =>
        ratios.map(({ofLabel, toLabel, ratio, adjustedP, degreesOfFreedom, influential, without}) => [
          cell.text(of),
          cell.text(`${ofLabel} to ${toLabel}`),
          cell.measure(units),
          cell.measure(ratio),
          cell.interval(ratio),
          cell.measure(degreesOfFreedom),
          cell.measure(adjustedP),
          cell.text(influential?.label),
          influential === undefined ? cell.blank : cell.measure(without)
        ])
      ),
      empty: notCompared(results.comparison)
    }
  ]
}
