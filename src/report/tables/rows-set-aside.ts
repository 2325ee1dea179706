import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const rowsSetAside: TableDefinition = {
  name: 'rows-set-aside',
  summary: 'Rows set aside, by table and by the rule that did it.',
  tables: ({results}) => [
    {
      name: 'rows-set-aside',
      columns: [
        wordColumn('Table'),
        wordColumn('Rule'),
        wordColumn('Why it matters'),
        numberColumn('Set aside', 'rows')
      ],
      rows: results.records.tables.flatMap(({table, reasons}) =>
        reasons.map(({code, rows}) => [
          cell.text(table),
          cell.text(code),
          cell.marked(results.records.byCode.find((rule) => rule.code === code)?.summary),
          cell.measure(rows)
        ])
      ),
      foot: [[cell.text('All tables'), cell.blank, cell.blank, cell.measure(results.records.setAsideRows)]],
      empty: 'No row was set aside.'
    }
  ]
}
