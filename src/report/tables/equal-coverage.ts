import type {Measure} from '../../model/quantity.ts'
import {asSentence} from '../plain-text.ts'
import type {Cell, TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {noteColumn, numberColumn, wordColumn} from './column.ts'
import {confidenceWords} from './rate-columns.ts'

interface AtCoverage {
  readonly size: Measure
  readonly beyond: boolean
  readonly q0: Measure
  readonly q1: Measure
  readonly q2: Measure
}

/** Each habitat's pooled catch, and its sites below it: what the sites differ by is what the intervals leave out. */
export const equalCoverage: TableDefinition = {
  name: 'equal-coverage',
  summary: 'Diversity of each habitat, and of its sites, at one and the same sample coverage.',
  tables: ({results}) =>
    results.scopes.map(({id, equalCoverage: {coverage, habitats, sites}}) => ({
      name: `equal-coverage-${id}`,
      columns: [
        wordColumn('Habitat'),
        {...wordColumn('Catch of'), rowHead: true},
        numberColumn('Individuals it takes'),
        noteColumn('That number is'),
        ...[0, 1, 2].flatMap((order) => [
          numberColumn(`q = ${order}`, order === 0 ? 'species' : 'effective species'),
          numberColumn(`Interval of q = ${order}`, confidenceWords(results))
        ])
      ],
      rows: habitats.flatMap((habitat) => [
        [cell.text(habitat.label), cell.text('all its sites, pooled'), ...numbers(habitat)],
        ...sites
          .filter((site) => site.habitat === habitat.id)
          .map((site) => [cell.text(habitat.label), cell.text(site.label), ...numbers(site)])
      ]),
      empty:
        'notDefined' in coverage
          ? asSentence(`there is no common coverage, because ${coverage.notDefined}`)
          : 'No habitat reaches the common coverage.'
    }))
}

function numbers({size, beyond, q0, q1, q2}: AtCoverage): readonly Cell[] {
  const reached = 'value' in size
  return [
    cell.measure(size),
    reached ? cell.text(beyond ? 'beyond the catch' : 'within the catch') : cell.blank,
    ...[q0, q1, q2].flatMap((measure) => [cell.measure(measure), cell.interval(measure)])
  ]
}
