import type {Measure} from '../../model/quantity.ts'
import {hiddenFromHabitats} from '../../model/withheld-taxa.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {shareCells, shareColumns} from './share-columns.ts'

/** A list of stages holds those that were caught: elsewhere there was none. */
const noneCaught: Measure = {label: 'individuals', kind: 'count', value: 0}

export const stages: TableDefinition = {
  name: 'stages',
  summary: 'Life stages of every taxon with an animal before the adult stage, by habitat.',
  tables: ({results}) => {
    const ranks = new Map(results.taxa.map(({taxon, rank}) => [taxon, rank]))
    const hidden = hiddenFromHabitats(results)
    return [
      {
        name: 'stages',
        columns: [
          wordColumn('Taxon'),
          wordColumn('Life stage'),
          ...results.habitats.map(({label}) => numberColumn(label)),
          numberColumn('All habitats'),
          ...shareColumns(results, 'Share of the stage', '% of the taxon')
        ],
        rows: results.sexesAndStages.stages.flatMap(({taxon, stages: known, habitats}) =>
          known.map(({stage, individuals, share}) => [
            cell.name({taxon, rank: ranks.get(taxon)}),
            cell.text(stage),
            ...results.habitats.map(({id}) => {
              if (hidden.has(taxon)) return cell.text('withheld')
              const own = habitats.find((habitat) => habitat.id === id)?.stages
              return cell.measure(own?.find((found) => found.stage === stage)?.individuals ?? noneCaught)
            }),
            cell.measure(individuals),
            ...shareCells(share)
          ])
        ),
        empty: 'No animal before the adult stage is on record.'
      }
    ]
  }
}
