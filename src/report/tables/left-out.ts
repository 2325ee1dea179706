import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const leftOut: TableDefinition = {
  name: 'left-out',
  summary: 'Names that count in the rates and are left out of diversity, with the reason.',
  tables: ({results}) => {
    const ranks = new Map(results.taxa.map(({taxon, rank}) => [taxon, rank]))
    return results.scopes.map((scope) => ({
      name: `left-out-${scope.id}`,
      columns: [wordColumn('Name'), wordColumn('Left out because'), numberColumn('Caught', 'individuals')],
      rows: scope.leftOut.map(({taxon, reason, individuals}) => [
        cell.name({taxon, rank: ranks.get(taxon)}),
        cell.text(reason),
        cell.measure(individuals)
      ]),
      foot: [[cell.text('All names left out'), cell.blank, cell.measure(scope.leftOutIndividuals)]],
      empty: 'No name was left out.'
    }))
  }
}
