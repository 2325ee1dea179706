import {callableNames as namesIn} from '../callable-names.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

export const callableNames: TableDefinition = {
  name: 'callable-names',
  summary:
    'Every name of a number, text or list that a text or template can call, with what stands there now.',
  tables: ({results}) => [
    {
      name: 'callable-names',
      columns: ['Name', 'Stands for', 'What it is', 'Called by'].map(wordColumn),
      rows: namesIn(results).map(({path, value, meaning, directives}) => [
        cell.text(path),
        cell.text(value),
        cell.text(meaning),
        cell.text(directives)
      ]),
      empty: 'There is nothing to call.'
    }
  ]
}
