import {
  AlignmentType,
  BorderStyle,
  type IBorderOptions,
  Paragraph,
  type ParagraphChild,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  TextRun,
  VerticalAlignTable,
  WidthType
} from 'docx'
import type {PhrasingContent} from 'mdast'
import {toString as wordsOf} from 'mdast-util-to-string'
import type {PrintedCell} from '../report/print-table.ts'
import {type ColumnMeasure, measureColumn} from './column-widths.ts'
import type {Draft} from './docx-draft.ts'
import {docxRuns, type Look, words} from './docx-runs.ts'
import {ruleColour, tableCellMargin, tableTextSize} from './docx-styles.ts'
import {fitTable, type TableFit, type TablePart} from './docx-table-fit.ts'

/** What a table of any kind comes down to. */
export interface Grid {
  readonly columns: readonly {
    readonly head: readonly PhrasingContent[]
    readonly unit?: string | undefined
    readonly align: 'left' | 'right'
  }[]
  readonly rows: readonly {readonly cells: readonly PrintedCell[]; readonly isTotal: boolean}[]
  /** How many columns at the left name the rows: every part of a table too wide for a page begins with them. */
  readonly rowHeads: number
}

const none: IBorderOptions = {style: BorderStyle.NONE}
const thick: IBorderOptions = {style: BorderStyle.SINGLE, size: 8, color: 'auto'}
const thin: IBorderOptions = {style: BorderStyle.SINGLE, size: 4, color: 'auto'}
const hairline: IBorderOptions = {style: BorderStyle.SINGLE, size: 2, color: ruleColour}

/** The grid as one table, or as several where it is too wide for a page laid sideways. */
export function docxGrid(draft: Draft, grid: Grid): {tables: Table[]; landscape: boolean} {
  const measures = grid.columns.map(({head, unit, align}, index) =>
    measureColumn({
      align,
      head: unit === undefined ? wordsOf(head) : `${wordsOf(head)} ${unit}`,
      cells: grid.rows.map(({cells}) => wordsOf(cells[index]?.children ?? []) + (cells[index]?.mark ?? ''))
    })
  )
  const fit = fitTable(measures, grid.rowHeads, tableCellMargin)
  return {tables: fit.parts.map((part) => table(draft, grid, measures, fit, part)), landscape: fit.landscape}
}

function table(
  draft: Draft,
  {columns, rows}: Grid,
  measures: readonly ColumnMeasure[],
  {size}: TableFit,
  part: TablePart
): Table {
  const look: Look = size * 2 === tableTextSize ? {} : {size: size * 2}
  const cell = (
    place: number,
    paragraph: CellParagraph,
    border: {top?: IBorderOptions; bottom?: IBorderOptions}
  ) => {
    const {style, keepNext, indent = 0, children} = paragraph
    const column = columns[part.columns[place]!]!
    return new TableCell({
      width: {size: part.widths[place]!, type: WidthType.DXA},
      borders: border,
      ...(style === 'TableHead' && {verticalAlign: VerticalAlignTable.BOTTOM}),
      children: [
        new Paragraph({
          style,
          ...(column.align === 'right' && {alignment: AlignmentType.RIGHT}),
          ...(indent > 0 && {indent: {right: Math.round(indent * size * 20)}}),
          ...(keepNext && {keepNext}),
          children
        })
      ]
    })
  }
  const head = part.columns.map((index, place) => {
    const {head: title, unit} = columns[index]!
    const children = docxRuns(draft, title, look)
    if (unit !== undefined) children.push(...words(` ${unit}`, {...look, bold: false}))
    return cell(place, {style: 'TableHead', keepNext: true, children}, {bottom: thin})
  })
  const body = rows.map(({cells, isTotal}, row) => {
    const keepNext = part.isKept && row < rows.length - 1
    const border = isTotal && rows[row - 1]?.isTotal === false ? {top: thin} : {}
    return part.columns.map((index, place) => {
      const {children = [], mark} = cells[index] ?? {}
      const runs = docxRuns(draft, children, look)
      if (mark !== undefined) runs.push(new TextRun({...look, text: mark, superScript: true}))
      const style = isTotal ? 'TableTotal' : 'TableText'
      return cell(place, {style, keepNext, indent: measures[index]?.indents[row], children: runs}, border)
    })
  })
  return new Table({
    style: 'ReportTable',
    layout: TableLayoutType.FIXED,
    width: {size: part.widths.reduce((sum, width) => sum + width, 0), type: WidthType.DXA},
    columnWidths: part.widths,
    borders: {
      top: thick,
      bottom: thick,
      left: none,
      right: none,
      insideHorizontal: hairline,
      insideVertical: none
    },
    tableLook: {
      firstRow: true,
      lastRow: false,
      firstColumn: true,
      lastColumn: false,
      noHBand: true,
      noVBand: true
    },
    rows: [
      new TableRow({tableHeader: true, cantSplit: true, children: head}),
      // LibreOffice loses the rest of a table that breaks after a first row which may not be split itself.
      ...body.map((children, row) => new TableRow({cantSplit: row > 0, children}))
    ]
  })
}

interface CellParagraph {
  readonly style: 'TableHead' | 'TableText' | 'TableTotal'
  readonly keepNext: boolean
  /** Space after a number that puts the decimal points below each other, in ems. */
  readonly indent?: number | undefined
  readonly children: ParagraphChild[]
}
