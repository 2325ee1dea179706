import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

export const checklist: TableDefinition = {
  name: 'checklist',
  summary: 'What a pitfall study should report, and whether this one does.',
  tables: ({results}) => [
    {
      name: 'checklist',
      columns: ['What should be reported', 'Status', 'What is on record'].map(wordColumn),
      rows: results.checklist.map(({item, status, detail}) => [
        cell.text(item),
        cell.text(status),
        cell.text(detail)
      ]),
      empty: 'No checklist was made.'
    }
  ]
}
