import type {AssemblageResult} from '../../model/results.ts'
import type {Cell, TableDefinition} from '../table.ts'
import {assemblages} from './assemblages.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {confidenceWords} from './rate-columns.ts'

export const diversity: TableDefinition = {
  name: 'diversity',
  summary: 'Species and completeness of each habitat, one table for each group.',
  tables: ({results}) =>
    results.scopes.map((scope) => ({
      name: `diversity-${scope.id}`,
      columns: [
        wordColumn('Catch of'),
        numberColumn('Sites'),
        numberColumn('Effort', 'trap-nights'),
        numberColumn('n', 'individuals'),
        numberColumn('S', 'species'),
        numberColumn('f1'),
        numberColumn('f2'),
        numberColumn('Coverage'),
        numberColumn('Chao1', 'species, lower bound'),
        numberColumn('Interval', confidenceWords(results))
      ],
      rows: assemblages(scope).map(diversityCells),
      empty: 'There is no catch in this group.'
    }))
}

function diversityCells(of: AssemblageResult): readonly Cell[] {
  return [
    cell.text(of.label),
    ...[
      of.sites,
      of.net,
      of.individuals,
      of.species,
      of.singletons,
      of.doubletons,
      of.coverage,
      of.chao1
    ].map(cell.measure),
    cell.interval(of.chao1)
  ]
}
