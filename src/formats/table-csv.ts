import {isDefined, type Measure} from '../model/quantity.ts'
import {asSentence} from '../report/plain-text.ts'
import type {Cell, ReportTable} from '../report/table.ts'
import {type CsvCell, csv} from './csv.ts'

/** One column of the file: its head, and what it holds of each row's cells. */
interface FileColumn {
  readonly head: string
  readonly cell: (cells: readonly Cell[]) => CsvCell
}

/**
 * A table of a report as data: tables/<name>.csv. Numbers are not rounded; a share is a fraction of 1; an interval
 * is two columns, low and high; cautions, and reasons for numbers that are not defined, have a column of their
 * own. The rows below the line, such as totals, are left out: they would be counted twice.
 */
export function tableCsv(table: ReportTable): string {
  const columns = table.columns.flatMap((_, index) => fileColumns(table, index))
  return csv(
    columns.map(({head}) => head),
    table.rows.map((cells) => columns.map(({cell}) => cell(cells)))
  )
}

function fileColumns(table: ReportTable, index: number): FileColumn[] {
  const column = table.columns[index]
  const cells = table.rows.map((row) => row[index])
  const name = column?.head === '' || column === undefined ? `column ${index + 1}` : column.head
  const measures = cells.map(measureOf)
  const isInterval = cells.some((cell) => cell?.type === 'interval')
  const columns: FileColumn[] = []
  if (!isInterval)
    columns.push({head: withUnit(name, column?.unit, measures), cell: (row) => plainCell(row[index])})
  if (isInterval || (hasInterval(measures) && !isToldElsewhere(table, index))) {
    columns.push({head: `${name} low`, cell: (row) => end(row[index], 'low')})
    columns.push({head: `${name} high`, cell: (row) => end(row[index], 'high')})
  }
  if (!isInterval && measures.some((measure) => measure !== undefined && noteOf(measure) !== null)) {
    columns.push({head: `${name} note`, cell: (row) => noteOf(measureOf(row[index]))})
  }
  if (cells.some((cell) => cell?.type === 'taxon' && cell.authority !== undefined)) {
    columns.push({head: `${name} authority`, cell: (row) => authorityOf(row[index])})
  }
  return columns
}

function plainCell(cell: Cell | undefined): CsvCell {
  switch (cell?.type) {
    case 'measure':
      return isDefined(cell.measure) ? cell.measure.value : null
    case 'text':
      return cell.text
    case 'date':
      return cell.day
    case 'taxon':
      return cell.taxon
    case 'place':
      return cell.place
    default:
      return null
  }
}

/** The unit that the raw numbers have: a page prints a share as per cent, the file holds the fraction. */
function withUnit(
  name: string,
  unit: string | undefined,
  measures: readonly (Measure | undefined)[]
): string {
  const isShare = measures.some((measure) => measure?.kind === 'share')
  const said = isShare ? 'fraction' : unit
  return said === undefined ? name : `${name} (${said})`
}

/** Whether another column prints the intervals of this one's measures. */
function isToldElsewhere({columns, rows}: ReportTable, index: number): boolean {
  return columns.some((_, other) =>
    rows.some((row) => {
      const cell = row[other]
      return cell?.type === 'interval' && cell.measure === measureOf(row[index])
    })
  )
}

function hasInterval(measures: readonly (Measure | undefined)[]): boolean {
  return measures.some(
    (measure) => measure !== undefined && isDefined(measure) && measure.interval !== undefined
  )
}

function measureOf(cell: Cell | undefined): Measure | undefined {
  return cell?.type === 'measure' || cell?.type === 'interval' ? cell.measure : undefined
}

function end(cell: Cell | undefined, side: 'low' | 'high'): CsvCell {
  const measure = measureOf(cell)
  return measure !== undefined && isDefined(measure) ? (measure.interval?.[side] ?? null) : null
}

function noteOf(measure: Measure | undefined): string | null {
  if (measure === undefined) return null
  if (!isDefined(measure)) return asSentence(`not defined, because ${measure.notDefined}`)
  return measure.caution === undefined ? null : asSentence(measure.caution)
}

function authorityOf(cell: Cell | undefined): string | null {
  return cell?.type === 'taxon' ? (cell.authority ?? null) : null
}
