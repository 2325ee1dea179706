import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {rateUnit} from './rate-columns.ts'

/** Whether a row set aside would change what the report says. */
export const setAsideEffect: TableDefinition = {
  name: 'set-aside-effect',
  summary:
    'Individuals, activity-density, species and Chao1 of each habitat without and with the rows of the catch that were set aside.',
  tables: ({results}) => [
    {
      name: 'set-aside-effect',
      columns: [
        wordColumn('Group'),
        wordColumn('Habitat'),
        numberColumn('Individuals'),
        numberColumn('With the rows set aside'),
        numberColumn('Activity-density', rateUnit),
        numberColumn('Activity-density with them', rateUnit),
        numberColumn('S', 'species'),
        numberColumn('S with them', 'species'),
        numberColumn('Chao1', 'species, lower bound'),
        numberColumn('Chao1 with them', 'species, lower bound')
      ],
      rows: results.sensitivity.setAside.effect.flatMap(({of, habitats}) =>
        habitats.map(({label, without, withThem}) => [
          cell.text(of),
          cell.text(label),
          cell.measure(without.individuals),
          cell.measure(withThem.individuals),
          cell.measure(without.rate),
          cell.measure(withThem.rate),
          cell.measure(without.species),
          cell.measure(withThem.species),
          cell.measure(bare(without.chao1)),
          cell.measure(bare(withThem.chao1))
        ])
      ),
      empty: 'No row that was set aside can be counted with the others.'
    }
  ]
}

/** The cautions of Chao1 stand with it where it is reported; here only the difference counts. */
function bare<Kept extends object>(measure: Kept | undefined): Kept | undefined {
  return measure && {...measure, caution: undefined}
}
