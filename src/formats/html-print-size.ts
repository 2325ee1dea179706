import {toString as wordsOf} from 'mdast-util-to-string'
import type {PrintedTable} from '../report/print-table.ts'
import {type ColumnMeasure, linesOfRows, measureColumn, shareWidth} from './column-widths.ts'

/** How a table may be set on paper: what `page.css` does for these classes, in points. */
interface Setting {
  readonly classes: readonly string[]
  /** Width of the page between its margins. */
  readonly width: number
  readonly size: number
  /** Space at both sides of a column together. */
  readonly padding: number
}

/** A4 less the margins that `page.css` gives it. */
const upright = 470
const sideways = 717

const settings: readonly Setting[] = [
  {classes: [], width: upright, size: 8.5, padding: 8.4},
  {classes: ['dense'], width: upright, size: 7.5, padding: 6.3},
  {classes: ['dense', 'fine'], width: upright, size: 6.5, padding: 3.8},
  {classes: ['dense', 'broad'], width: sideways, size: 7.5, padding: 6.3},
  {classes: ['dense', 'fine', 'broad'], width: sideways, size: 6.5, padding: 3.8}
]

/** What no other setting holds is set in the smallest type that can be read. */
const smallest = ['dense', 'vast', 'broad']

/** Rows of more lines than this, on the average, are set in smaller type instead. */
const comfortableLines = 1.8

/** What the columns of a table need. */
export function columnMeasures({columns, rows, foot}: PrintedTable): readonly ColumnMeasure[] {
  const cells = [...rows, ...foot]
  return columns.map(({head, unit = '', align}, index) =>
    measureColumn({
      align,
      head: `${head} ${unit}`,
      cells: cells.map((row) => `${wordsOf(row[index]?.children ?? [])}${row[index]?.mark ?? ''}`)
    })
  )
}

/**
 * The classes of a table's block that print it without cutting anything: in the largest type in which rows stay low,
 * and on a page laid sideways only where it fits no upright one, for such a page begins anew and is rarely filled.
 */
export function printSize(columns: readonly ColumnMeasure[]): readonly string[] {
  const comfortable = settings.find(
    (setting) =>
      setting.width === upright &&
      (averageLines(columns, setting) ?? Number.POSITIVE_INFINITY) <= comfortableLines
  )
  if (comfortable !== undefined) return comfortable.classes
  const fitting = settings.filter((setting) => widthsIn(columns, setting) !== undefined)
  return (fitting.find(({classes}) => classes.length > 0) ?? fitting[0])?.classes ?? smallest
}

/** Lines of a row on the average; undefined where words would break. */
function averageLines(columns: readonly ColumnMeasure[], setting: Setting): number | undefined {
  const widths = widthsIn(columns, setting)
  if (widths === undefined) return undefined
  const lines = linesOfRows(columns, widths)
  return lines.reduce((sum, count) => sum + count, 0) / Math.max(1, lines.length)
}

/** Widths of the columns, in ems of their type; undefined where words would break. */
function widthsIn(
  columns: readonly ColumnMeasure[],
  {width, size, padding}: Setting
): readonly number[] | undefined {
  return shareWidth(columns, (width - columns.length * padding) / size)
}
