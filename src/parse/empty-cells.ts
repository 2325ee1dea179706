import {listWords} from '../model/list-words.ts'
import type {Problem} from '../model/study.ts'
import type {ColumnReader} from './column-reader.ts'
import {saysNothing} from './number-remedy.ts'
import type {TableReaderSetup} from './table-reader.ts'

/** One finding for all cells of a row that must be filled and are not. */
export function emptyCells(
  {table, file, places}: TableReaderSetup,
  row: number,
  empty: readonly ColumnReader[],
  cells: readonly string[]
): Problem {
  const index = empty[0]?.index ?? 0
  const names = empty.map(({column}) => column.name)
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '')
  const isNote = filled.length === 1 && names.length > 1
  const isNoCatch =
    table.name === 'catch' &&
    (names.includes('taxon') || (names.includes('count') && filled.some(saysNothing)))
  const remedy = isNote
    ? 'if this line is a note and no row, begin it with `#`; else fill the cells'
    : isNoCatch
      ? 'if nothing was caught, take the row out and write `empty` in the column `sample` of visits.csv; else fill the cells'
      : undefined
  const missing = `${listWords(names.map((name) => `\`${name}\``))} ${names.length === 1 ? 'is' : 'are'} empty`
  return {
    code: 'empty-required-cell',
    place: {file, line: places.line(row, index), column: places.column(row, index)},
    message: isNote ? `only \`${filled[0]}\` stands in this line; ${missing}` : missing,
    ...(remedy !== undefined && {remedy}),
    table: table.name,
    row,
    setsAside: true
  }
}
