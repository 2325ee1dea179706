import type {Measure} from '../../model/quantity.ts'
import type {CatchResult, Results} from '../../model/results.ts'
import type {Cell, TableColumn} from '../table.ts'
import {cell} from './cell.ts'
import {noteColumn, numberColumn} from './column.ts'

export const rateUnit = 'per 100 trap-nights'

/** Activity-density, its interval and what kind of interval that is: the three are never shown apart. */
export function rateColumns(results: Results): readonly TableColumn[] {
  return [
    numberColumn('Activity-density', rateUnit),
    numberColumn('Interval', confidenceWords(results)),
    noteColumn('Kind of interval')
  ]
}

export function rateCells({rate}: CatchResult): readonly Cell[] {
  return [cell.measure(rate), cell.interval(rate), cell.method(rate)]
}

/** `95 %`, the level of every interval of the study. */
export function confidenceWords({confidence}: Results): string {
  return `${Math.round(confidence * 1000) / 10} %`
}

/** The rate per metre of rim, in tables of a study whose trap types differ. */
export function rimColumns(catches: readonly CatchResult[]): readonly TableColumn[] {
  return hasRimRate(catches)
    ? [numberColumn('Activity-density by rim', 'per metre of rim and 100 trap-nights')]
    : []
}

export function rimCells(catches: readonly CatchResult[], {rimRate}: CatchResult): readonly Cell[] {
  return hasRimRate(catches) ? [cell.measure(rimRate)] : []
}

function hasRimRate(catches: readonly CatchResult[]): boolean {
  return catches.some(({rimRate}: {rimRate?: Measure | undefined}) => rimRate !== undefined)
}
