import type {EffortResult} from '../../model/results.ts'
import type {Cell, TableColumn} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn} from './column.ts'

/** Planned, achieved and lost effort, the same columns wherever effort is listed. */
export const effortColumns: readonly TableColumn[] = [
  numberColumn('Exposures'),
  numberColumn('Planned', 'trap-nights'),
  numberColumn('Exposed', 'trap-nights'),
  numberColumn('Achieved', 'trap-nights'),
  numberColumn('Not sorted yet', 'trap-nights'),
  numberColumn('Lost', 'trap-nights'),
  numberColumn('Lost', 'of planned')
]

export function effortCells(effort: EffortResult): readonly Cell[] {
  const {exposures, planned, exposed, net, unsorted, lost, shareLost} = effort
  return [exposures, planned, exposed, net, unsorted, lost, shareLost].map(cell.measure)
}
