import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {effortCells, effortColumns} from './effort-columns.ts'

export const effortBySite: TableDefinition = {
  name: 'effort-by-site',
  summary: 'Planned, achieved and lost trap-nights of each site.',
  tables: ({results}) => [
    {
      name: 'effort-by-site',
      columns: [wordColumn('Site'), wordColumn('Habitat'), numberColumn('Traps'), ...effortColumns],
      rows: results.sites.map((site) => [
        cell.text(site.name),
        cell.text(site.habitatLabel),
        cell.measure(site.traps),
        ...effortCells(site.effort)
      ]),
      foot: [
        [
          cell.text('All sites'),
          cell.blank,
          cell.measure(results.design.traps),
          ...effortCells(results.effort)
        ]
      ],
      empty: 'No site was sampled.'
    }
  ]
}
