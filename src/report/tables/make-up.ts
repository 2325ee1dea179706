import type {MakeUpResult, ScopeResult} from '../../model/results.ts'
import type {Cell, TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {shareCells, shareColumns} from './share-columns.ts'

/** Guilds and body sizes, as far as taxa.csv tells them; what it does not tell is a row of its own. */
export const makeUp: TableDefinition = {
  name: 'make-up',
  summary: 'Make-up of the catch of each group by guild and by body size, in each habitat.',
  tables: ({results}) =>
    results.scopes.map((scope) => ({
      name: `make-up-${scope.id}`,
      columns: [
        wordColumn('By'),
        {...wordColumn('Class'), rowHead: true},
        ...results.habitats.flatMap(({label}) =>
          shareColumns(results, label, '% of individuals', `Interval, ${label}`)
        ),
        numberColumn('Individuals in all'),
        numberColumn('Names in all')
      ],
      rows: [
        ...rowsOf('guild', scope.guilds, results.habitats),
        ...rowsOf('body length', scope.bodySizes, results.habitats)
      ],
      empty: emptyWords(scope)
    }))
}

function rowsOf(
  by: string,
  {recorded, unknown, classes, study, habitats}: MakeUpResult,
  columns: readonly {readonly id: string}[]
): readonly (readonly Cell[])[] {
  if (!recorded) return []
  const rows = classes.map((name) => {
    const whole = study.find((found) => found.class === name)
    return [
      cell.text(by),
      cell.text(name),
      ...columns.flatMap(({id}) => {
        const own = habitats.find((habitat) => habitat.id === id)?.classes
        return shareCells(own?.find((found) => found.class === name)?.share)
      }),
      cell.measure(whole?.individuals),
      cell.measure(whole?.species)
    ]
  })
  if (!('value' in unknown) || unknown.value === 0) return rows
  return [
    ...rows,
    [
      cell.text(by),
      cell.text('not known'),
      ...columns.flatMap(() => shareCells(undefined)),
      cell.measure(unknown),
      cell.blank
    ]
  ]
}

function emptyWords({guilds, bodySizes}: ScopeResult): string {
  return guilds.recorded || bodySizes.recorded
    ? 'Nothing was caught in this group.'
    : 'Neither guilds nor body lengths are on record.'
}
