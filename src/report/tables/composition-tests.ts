import type {ScopeResult} from '../../model/results.ts'
import type {Cell, TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {notCompared} from './comparisons.ts'
import {permutationCells, permutationColumns} from './permutation-columns.ts'

/** The test of location is never listed without the test of spread, because it answers to both. */
export const compositionTests: TableDefinition = {
  name: 'composition-tests',
  summary:
    'Tests of a difference in composition between habitats, each with the test of equal spread below it.',
  tables: ({results}) => [
    {
      name: 'composition-tests',
      columns: [
        wordColumn('Group'),
        wordColumn('Test of'),
        numberColumn(results.comparison.unit === 'trap' ? 'Traps' : 'Sites'),
        numberColumn('R²'),
        numberColumn('F'),
        numberColumn('Degrees of freedom', 'habitats'),
        numberColumn('Degrees of freedom', 'residual'),
        numberColumn('p', 'by permutation'),
        ...permutationColumns
      ],
      rows: results.scopes.filter(({composition}) => composition.supported).flatMap(rowsOf),
      empty: notCompared(results.scopes[0]?.composition ?? {reasons: ['no group was analysed']})
    }
  ]
}

function rowsOf({label, composition}: ScopeResult): readonly (readonly Cell[])[] {
  const {units, permanova, dispersion} = composition
  const test = (
    of: string,
    r2: Cell,
    {
      f,
      groupDegreesOfFreedom,
      residualDegreesOfFreedom,
      p,
      permutations
    }: typeof permanova | typeof dispersion
  ): readonly Cell[] => [
    cell.text(label),
    cell.text(of),
    cell.measure(units),
    r2,
    cell.measure(f),
    cell.measure(groupDegreesOfFreedom),
    cell.measure(residualDegreesOfFreedom),
    cell.measure(p),
    ...permutationCells(permutations)
  ]
  return [
    test('composition', cell.measure(permanova.r2), permanova),
    test('spread alone', cell.blank, dispersion)
  ]
}
