import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

/** The table that lists all others: those of the definitions given, and itself. */
export function callableTables(definitions: readonly TableDefinition[]): TableDefinition {
  const own: Pick<TableDefinition, 'name' | 'summary'> = {
    name: 'callable-tables',
    summary: 'Every table that a text or template can call.'
  }
  return {
    ...own,
    tables: (source) => [
      {
        name: own.name,
        columns: ['Name', 'What it shows'].map(wordColumn),
        rows: [
          ...definitions.flatMap(({summary, tables}) => tables(source).map(({name}) => ({name, summary}))),
          own
        ].map(({name, summary}) => [cell.text(name), cell.text(summary)]),
        empty: 'There is no table.'
      }
    ]
  }
}
