import {plainText} from '../plain-text.ts'
import type {TableDefinition} from '../table.ts'
import {familyName, makersOf, yearOf} from '../work.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

export const callableWorks: TableDefinition = {
  name: 'callable-works',
  summary: 'Every work that a text or template can cite.',
  tables: ({works = []}) => [
    {
      name: 'callable-works',
      columns: ['Name', 'Authors', 'Year', 'Title'].map(wordColumn),
      rows: works.map((work) => [
        cell.text(work.id),
        cell.text(makersOf(work).map(familyName).join(', ')),
        cell.text(yearOf(work)),
        cell.text(plainText((work.title ?? '').replace(/<[^>]*>/g, '')))
      ]),
      empty: 'There is no work to cite.'
    }
  ]
}
