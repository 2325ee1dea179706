import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const rowBalance: TableDefinition = {
  name: 'row-balance',
  summary: 'Rows read, used and set aside, for each table of records.',
  tables: ({results}) => [
    {
      name: 'row-balance',
      columns: [
        wordColumn('Table'),
        wordColumn('File'),
        wordColumn('Read as'),
        numberColumn('Read', 'rows'),
        numberColumn('Used', 'rows'),
        numberColumn('Set aside', 'rows')
      ],
      rows: results.records.tables.map(({table, file, readAs, read, used, setAside}) => [
        cell.text(table),
        cell.place(file),
        cell.text(readAs),
        cell.measure(read),
        cell.measure(used),
        cell.measure(setAside)
      ]),
      foot: [
        [
          cell.text('All tables'),
          cell.blank,
          cell.blank,
          cell.measure(results.records.readRows),
          cell.measure(results.records.usedRows),
          cell.measure(results.records.setAsideRows)
        ]
      ],
      empty: 'No table was read.'
    }
  ]
}
