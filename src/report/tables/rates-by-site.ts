import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {rateCells, rateColumns, rimCells, rimColumns} from './rate-columns.ts'

export const ratesBySite: TableDefinition = {
  name: 'rates-by-site',
  summary: 'Catch, effort and activity-density of each site.',
  tables: ({results}) => {
    const catches = [...results.sites.map((site) => site.catch), results.catch]
    return [
      {
        name: 'rates-by-site',
        columns: [
          wordColumn('Site'),
          wordColumn('Habitat'),
          numberColumn('Effort', 'trap-nights'),
          numberColumn('Caught', 'individuals'),
          ...rateColumns(results),
          ...rimColumns(catches)
        ],
        rows: results.sites.map((site) => [
          cell.text(site.name),
          cell.text(site.habitatLabel),
          cell.measure(site.effort.net),
          cell.measure(site.catch.individuals),
          ...rateCells(site.catch),
          ...rimCells(catches, site.catch)
        ]),
        foot: [
          [
            cell.text('All sites'),
            cell.blank,
            cell.measure(results.effort.net),
            cell.measure(results.catch.individuals),
            ...rateCells(results.catch),
            ...rimCells(catches, results.catch)
          ]
        ],
        empty: 'No site was sampled.'
      }
    ]
  }
}
