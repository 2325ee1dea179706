import {textWidth} from '../svg/text-metrics/text-width.ts'
import {alignDecimals} from './align-decimals.ts'

/** The words of a column, on which its width depends. */
export interface ColumnWords {
  readonly align: 'left' | 'right'
  readonly head: string
  readonly cells: readonly string[]
}

/** What a column needs, in ems of the table's type. */
export interface ColumnMeasure {
  /** Width in which no word, and no number, is broken. */
  readonly least: number
  /** Width in which nothing is broken. */
  readonly most: number
  /** Width of each cell on one line. */
  readonly cells: readonly number[]
  /** Space after each cell of a right-aligned column that puts the decimal points below each other. */
  readonly indents: readonly number[]
}

/** Longer words than this may be broken: an address would push everything else off the page. */
const longestUnbroken = 14

const digit = 1139 / 2048
const point = 569 / 2048
const figureSpace = '\u2007'

/** Lines are rarely filled to their end. */
const slack = 1.12

export function measureColumn({align, head, cells}: ColumnWords): ColumnMeasure {
  const indents =
    align === 'right'
      ? alignDecimals(cells).map((spaces) =>
          [...spaces].reduce((sum, space) => sum + (space === figureSpace ? digit : point), 0)
        )
      : cells.map(() => 0)
  const whole = cells.map((text, index) => ems(text) + (indents[index] ?? 0))
  const parts =
    align === 'right' ? whole : cells.flatMap(unbroken).map((word) => Math.min(ems(word), longestUnbroken))
  const least = largest([1, ...unbroken(head).map((word) => ems(word, true)), ...parts])
  return {least, most: largest([least, ...whole]), cells: whole, indents}
}

/**
 * Widths that share out the room, in ems: natural ones where there is room for them, else such that the longest cell
 * of each column takes the same number of lines, as far as unbroken words allow. Undefined where words would break.
 */
export function shareWidth(columns: readonly ColumnMeasure[], room: number): number[] | undefined {
  if (total(columns.map(({least}) => least)) > room) return undefined
  for (let lines = 1; ; lines += 0.1) {
    const widths = columns.map(({least, most}) => Math.max(least, Math.min(most, (most * slack) / lines)))
    if (total(widths) <= room) return widths
  }
}

/** Words that are broken, as a last resort, rather than columns that leave the page. */
export function squeezeWidth(columns: readonly ColumnMeasure[], room: number): number[] {
  const sum = total(columns.map(({least}) => least))
  return columns.map(({least}) => (least * room) / sum)
}

/** How many lines each row takes, about, in columns of these widths. */
export function linesOfRows(columns: readonly ColumnMeasure[], widths: readonly number[]): number[] {
  const rows = columns[0]?.cells.length ?? 0
  return Array.from({length: rows}, (_, row) =>
    largest(
      columns.map(({cells}, index) => {
        const [cell = 0, width = 1] = [cells[row], widths[index]]
        return cell <= width ? 1 : Math.ceil((cell * slack) / width)
      })
    )
  )
}

function unbroken(text: string): string[] {
  return text.split(/\s+|(?<=[-/])/)
}

function ems(text: string, bold = false): number {
  return textWidth({fontSize: 1, fontWeight: bold ? 'bold' : 'normal'}, text)
}

function largest(numbers: readonly number[]): number {
  return numbers.reduce((most, number) => Math.max(most, number), 0)
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0)
}
