import {countingErrorMethod} from '../../model/counting-error.ts'
import type {Measure} from '../../model/quantity.ts'
import type {Results} from '../../model/results.ts'
import type {Cell, TableColumn} from '../table.ts'
import {cell} from './cell.ts'
import {noteColumn, numberColumn} from './column.ts'
import {confidenceWords} from './rate-columns.ts'

/** A share and its interval; of an interval that is none between sampling units a note says so. */
export function shareColumns(
  results: Results,
  head: string,
  of: string,
  intervalHead = 'Interval'
): readonly TableColumn[] {
  return [
    numberColumn(head, of),
    numberColumn(intervalHead, confidenceWords(results)),
    noteColumn('Kind of interval')
  ]
}

/** @param share absent where there is nothing to share */
export function shareCells(share: Measure | undefined): readonly Cell[] {
  if (share === undefined) return [cell.blank, cell.blank, cell.blank]
  const method = 'value' in share ? share.interval?.method : undefined
  return [
    cell.measure(share),
    cell.interval(share),
    cell.text(method === countingErrorMethod ? method : undefined)
  ]
}
