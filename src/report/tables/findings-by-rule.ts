import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const findingsByRule: TableDefinition = {
  name: 'findings-by-rule',
  summary: 'Number of findings of each rule.',
  tables: ({results}) => [
    {
      name: 'findings-by-rule',
      columns: [
        wordColumn('Severity'),
        wordColumn('Rule'),
        wordColumn('Why it matters'),
        numberColumn('Findings')
      ],
      rows: results.records.byCode.map(({code, severity, findings, summary}) => [
        cell.text(severity),
        cell.text(code),
        cell.marked(summary),
        cell.measure(findings)
      ]),
      foot: [[cell.text('All rules'), cell.blank, cell.blank, cell.measure(results.records.findings.total)]],
      empty: 'No rule found anything.'
    }
  ]
}
