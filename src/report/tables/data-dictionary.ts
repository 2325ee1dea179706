import type {Column, ColumnKind} from '../../model/column.ts'
import {tables} from '../../model/columns.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

const kindWords: Readonly<Record<ColumnKind, string>> = {
  id: 'short name',
  text: 'text',
  day: 'day',
  moment: 'day, with a time if known',
  count: 'whole number',
  number: 'number',
  fraction: 'number above 0, up to 1',
  latitude: 'decimal degrees',
  longitude: 'decimal degrees',
  word: 'one of the words'
}

export const dataDictionary: TableDefinition = {
  name: 'data-dictionary',
  summary: 'Every column of every table of records, and what it means.',
  tables: () => [
    {
      name: 'data-dictionary',
      columns: ['Column', 'Table', 'Holds', 'Unit', 'Needed', 'Meaning'].map(wordColumn),
      rows: Object.values(tables).flatMap(({name, columns}) =>
        columns.map((column) => [
          cell.text(column.name),
          cell.text(name),
          cell.text(kindWords[column.kind]),
          cell.text(column.unit),
          cell.text(column.required === true ? 'yes' : undefined),
          cell.text(meaningWords(column))
        ])
      ),
      empty: 'There are no columns.'
    }
  ]
}

function meaningWords({meaning, words}: Column): string {
  return words === undefined ? meaning : `${meaning} (${words.join(', ')})`
}
