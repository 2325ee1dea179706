import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const vertebrates: TableDefinition = {
  name: 'vertebrates',
  summary: 'Vertebrates caught by accident, and what became of them.',
  tables: ({results}) => {
    const siteNames = new Map(results.sites.map(({id, name}) => [id, name]))
    return [
      {
        name: 'vertebrates',
        columns: [
          wordColumn('Site'),
          wordColumn('Trap'),
          wordColumn('Collected'),
          wordColumn('What'),
          wordColumn('What became of them'),
          numberColumn('Animals')
        ],
        rows: results.vertebrates.events.map((event) => [
          cell.text(siteNames.get(event.site) ?? event.site),
          cell.text(event.trap),
          cell.date(event.collected),
          cell.text(event.what ?? 'not recorded'),
          cell.text(event.fate ?? 'not recorded'),
          cell.measure(event.count)
        ]),
        foot: [
          [
            cell.text('All sites'),
            cell.blank,
            cell.blank,
            cell.blank,
            cell.blank,
            cell.measure(results.vertebrates.count)
          ]
        ],
        empty: results.vertebrates.recorded
          ? 'No vertebrate was found in a trap.'
          : 'It was not recorded whether vertebrates were caught.'
      }
    ]
  }
}
