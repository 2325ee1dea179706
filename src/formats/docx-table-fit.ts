import {type ColumnMeasure, linesOfRows, shareWidth, squeezeWidth} from './column-widths.ts'

/** How a table is set so that nothing of it is cut. */
export interface TableFit {
  readonly landscape: boolean
  /** Points. */
  readonly size: number
  /** One part, or several below each other. */
  readonly parts: readonly TablePart[]
}

export interface TablePart {
  /** Which columns of the table, by their place in it. */
  readonly columns: readonly number[]
  /** Twentieths of a point. */
  readonly widths: readonly number[]
  /** Whether the part is short enough to be kept on one page. */
  readonly isKept: boolean
}

/** Text area of an A4 page with margins of 25 mm, in twentieths of a point. */
const pages = {
  upright: {width: 9072, height: 14004, sizes: [9, 8.5, 8, 7.5, 7], kept: 0.4},
  sideways: {width: 14004, height: 9072, sizes: [9, 8.5, 8, 7.5, 7], kept: 0.7}
} as const

/** Rows higher than this, on the average, are set in smaller type or on a wider page instead. */
const comfortableLines = 2.5

/** A table of few rows is set in parts below each other: they take less room than a page laid sideways. */
const fewRows = 8

/** A table of few columns holds prose, which reads better in long rows than on a page laid sideways. */
const fewColumns = 4

/** Space above and below the words of a row, in points. */
const rowSpace = 3

interface Trial {
  readonly landscape: boolean
  readonly size: number
  readonly part: TablePart
  readonly lines: number
}

/**
 * The largest type, on an upright page if possible, in which no word or number is broken and rows are not too high.
 * The row heads, so many columns at the left, begin every part.
 */
export function fitTable(columns: readonly ColumnMeasure[], rowHeads: number, cellMargin: number): TableFit {
  const all = columns.map((_, index) => index)
  const trials = (['upright', 'sideways'] as const).flatMap((page) =>
    pages[page].sizes.flatMap((size) => tried(columns, all, page, size, cellMargin))
  )
  const isShort = (columns[0]?.cells.length ?? 0) <= fewRows
  const usable = trials.filter(({landscape}) => !landscape || !(isShort || columns.length <= fewColumns))
  const comfortable = usable.find(({lines}) => lines <= comfortableLines)
  const lowest = usable.reduce<Trial | undefined>(
    (best, trial) => (best === undefined || trial.lines < best.lines ? trial : best),
    undefined
  )
  const chosen = columns.length <= fewColumns ? (comfortable ?? usable[0]) : (comfortable ?? lowest)
  if (chosen !== undefined) return {landscape: chosen.landscape, size: chosen.size, parts: [chosen.part]}
  const page = isShort ? 'upright' : 'sideways'
  const size = isShort ? 8.5 : 7.5
  return {landscape: !isShort, size, parts: split(columns, rowHeads, page, size, cellMargin)}
}

/** A part of these columns, unless words would break in it. */
function tried(
  columns: readonly ColumnMeasure[],
  shown: readonly number[],
  page: keyof typeof pages,
  size: number,
  cellMargin: number
): Trial[] {
  const measures = shown.map((index) => columns[index]!)
  const widths = shareWidth(measures, roomFor(shown.length, page, size, cellMargin))
  if (widths === undefined) return []
  const rows = linesOfRows(measures, widths)
  const lines = rows.reduce((sum, count) => sum + count, 0)
  const part = asPart(shown, widths, page, size, cellMargin, lines * size * 1.15 + rows.length * rowSpace)
  return [{landscape: page === 'sideways', size, part, lines: lines / Math.max(1, rows.length)}]
}

/** The columns in groups that fit, each led by the row heads. */
function split(
  columns: readonly ColumnMeasure[],
  rowHeads: number,
  page: keyof typeof pages,
  size: number,
  cellMargin: number
): TablePart[] {
  const heads = columns.slice(0, rowHeads).map((_, index) => index)
  const groups: number[][] = []
  for (let index = rowHeads; index < columns.length; index += 1) {
    const last = groups.at(-1)
    if (last !== undefined && tried(columns, [...last, index], page, size, cellMargin).length > 0)
      last.push(index)
    else groups.push([...heads, index])
  }
  return (groups.length === 0 ? [heads] : groups).map((group) => {
    const [trial] = tried(columns, group, page, size, cellMargin)
    if (trial !== undefined) return trial.part
    const measures = group.map((index) => columns[index]!)
    const widths = squeezeWidth(measures, roomFor(group.length, page, size, cellMargin))
    return asPart(group, widths, page, size, cellMargin, Number.POSITIVE_INFINITY)
  })
}

function roomFor(count: number, page: keyof typeof pages, size: number, cellMargin: number): number {
  return (pages[page].width - count * (2 * cellMargin + 1)) / (size * 20)
}

function asPart(
  columns: readonly number[],
  widths: readonly number[],
  page: keyof typeof pages,
  size: number,
  cellMargin: number,
  height: number
): TablePart {
  return {
    columns,
    widths: widths.map((width) => Math.ceil(width * size * 20) + 2 * cellMargin),
    isKept: height * 20 <= pages[page].height * pages[page].kept
  }
}
