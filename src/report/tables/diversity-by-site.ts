import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const diversityBySite: TableDefinition = {
  name: 'diversity-by-site',
  summary: 'Species, completeness and diversity of each site, one table for each group.',
  tables: ({results}) => {
    const habitatLabels = new Map(results.sites.map(({id, habitatLabel}) => [id, habitatLabel]))
    return results.scopes.map((scope) => ({
      name: `diversity-by-site-${scope.id}`,
      columns: [
        wordColumn('Site'),
        wordColumn('Habitat'),
        numberColumn('Effort', 'trap-nights'),
        numberColumn('n', 'individuals'),
        numberColumn('S', 'species'),
        numberColumn('f1', 'singletons'),
        numberColumn('f2', 'doubletons'),
        numberColumn('Coverage'),
        numberColumn('q = 1 observed', 'effective species'),
        numberColumn('q = 2 observed', 'effective species')
      ],
      rows: scope.sites.map((site) => [
        cell.text(site.label),
        cell.text(habitatLabels.get(site.id)),
        cell.measure(site.net),
        cell.measure(site.individuals),
        cell.measure(site.species),
        cell.measure(site.singletons),
        cell.measure(site.doubletons),
        cell.measure(site.coverage),
        cell.measure(site.hill.q1.observed),
        cell.measure(site.hill.q2.observed)
      ]),
      empty: 'There is no catch in this group.'
    }))
  }
}
