import {formatPlace} from '../../model/place.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {noteColumn, wordColumn} from './column.ts'

export const findings: TableDefinition = {
  name: 'findings',
  summary: 'Every finding, with its place, what was found and how to mend it.',
  tables: ({findings}) => [
    {
      name: 'findings',
      columns: [
        ...['Place', 'Severity', 'Rule', 'What was found'].map(wordColumn),
        noteColumn('Why it matters'),
        wordColumn('How to mend it')
      ],
      rows: findings.map((finding) => [
        cell.place(formatPlace(finding.place)),
        cell.text(finding.severity),
        cell.text(finding.code),
        cell.marked(finding.message),
        cell.marked(finding.why),
        cell.marked(finding.remedy)
      ]),
      empty: 'Nothing was found that a reader should know.'
    }
  ]
}
