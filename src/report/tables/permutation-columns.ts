import type {PermutationsResult} from '../../model/results.ts'
import type {Cell, TableColumn} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

/** How the p before them came about; a p by permutation is never listed without. */
export const permutationColumns: readonly TableColumn[] = [
  numberColumn('Distinct arrangements'),
  numberColumn('Tried'),
  wordColumn('How'),
  numberColumn('Smallest p possible')
]

export function permutationCells({distinct, tried, exhaustive, floor}: PermutationsResult): readonly Cell[] {
  return [
    'value' in distinct && distinct.value >= Number.MAX_SAFE_INTEGER
      ? cell.text('more than 9,000,000,000,000,000')
      : cell.measure(distinct),
    cell.measure(tried),
    cell.text('value' in tried ? (exhaustive ? 'all' : 'drawn at random') : undefined),
    cell.measure(floor)
  ]
}
