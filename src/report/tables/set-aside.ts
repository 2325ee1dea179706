import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

/** The headline number without the rows set aside, and what it would be with them. */
export const setAside: TableDefinition = {
  name: 'set-aside',
  summary: 'Individuals recorded without and with the rows of the catch that were set aside.',
  tables: ({results}) => {
    const {rows, readable, individuals, withoutThem, withThem, shareSetAside} = results.sensitivity.setAside
    return [
      {
        name: 'set-aside',
        columns: [
          wordColumn('Rows of the catch'),
          numberColumn('Rows'),
          numberColumn('Rows with a whole count'),
          numberColumn('Individuals'),
          numberColumn('Share', '% of individuals')
        ],
        rows:
          'value' in rows
            ? [
                [
                  cell.text('in use, as reported'),
                  cell.blank,
                  cell.blank,
                  cell.measure(withoutThem),
                  cell.blank
                ],
                [
                  cell.text('set aside'),
                  cell.measure(rows),
                  cell.measure(readable),
                  cell.measure(individuals),
                  cell.measure(shareSetAside)
                ],
                [cell.text('both together'), cell.blank, cell.blank, cell.measure(withThem), cell.blank]
              ]
            : [],
        empty: 'The catch has no rows.'
      }
    ]
  }
}
