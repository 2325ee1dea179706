import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

export const callableFigures: TableDefinition = {
  name: 'callable-figures',
  summary: 'Every figure that a text or template can call.',
  tables: ({figures = []}) => [
    {
      name: 'callable-figures',
      columns: ['Name', 'What it shows'].map(wordColumn),
      rows: figures.map(({name, title}) => [cell.text(name), cell.text(title)]),
      empty: 'There is no figure.'
    }
  ]
}
