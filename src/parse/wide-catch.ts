import type {Problem} from '../model/study.ts'
import {translated} from './column-reader.ts'
import {mappingLine} from './missing-columns.ts'
import {readCount} from './read-number.ts'
import type {ColumnMap} from './resolve-columns.ts'
import {type TableReader, type TableReaderSetup, type TypedRow, tableReader} from './table-reader.ts'
import {yamlText} from './yaml-text.ts'

/**
 * Reads a wide catch table into one typed row per filled cell. All cells of a record share its row number: a cell
 * that cannot be read sets the whole collection aside, since the rest of it would be an undercount.
 *
 * An empty cell is no count. Only when the study says `blanks: zero` does a record without any count stand for an
 * empty trap.
 */
export function wideCatchReader(
  setup: TableReaderSetup,
  taxonColumns: readonly number[],
  blanks: 'zero' | 'unknown' | undefined,
  map: ColumnMap
): TableReader {
  const base = tableReader(setup)
  const {file, header, places, conventions} = setup
  const names = taxonColumns.map((index) => ({index, taxon: (header[index] ?? '').trim()}))
  const rows: TypedRow[] = []
  const problems: Problem[] = []
  const codes = conventions.words.count
  let blankCells = 0
  let firstBlank: {row: number; index: number} | undefined
  const add: TableReader['add'] = (cells, line, raw, broken) => {
    const typed = base.add(cells, line, raw, broken)
    if (typed === undefined) return undefined
    const before = rows.length
    for (const {index, taxon} of names) {
      const written = (cells[index] ?? '').trim()
      const text = codes === undefined ? written : translated(written, codes)
      if (text === '') {
        blankCells += 1
        firstBlank ??= {row: typed.row, index}
        continue
      }
      const count = readCount(text, conventions.decimal)
      if ('value' in count) {
        rows.push({...typed, taxon, count: count.value})
        continue
      }
      const place = {file, line: places.line(typed.row, index), column: places.column(typed.row, index)}
      const message = `${count.message} (${taxon})`
      problems.push({
        code: count.code,
        place,
        table: 'catch',
        row: typed.row,
        setsAside: true,
        message,
        cell: written,
        ...remedyOf(count.remedy, written, taxon, map)
      })
    }
    const [first] = names
    if (rows.length === before && blanks === 'zero' && first !== undefined)
      rows.push({...typed, taxon: first.taxon, count: 0})
    return typed
  }
  const contents: TableReader['contents'] = () => {
    const read = base.contents()
    const unclear: readonly Problem[] =
      blankCells > 0 && blanks === undefined
        ? [
            {
              code: 'blank-cells',
              place:
                firstBlank === undefined
                  ? {file}
                  : {
                      file,
                      line: places.line(firstBlank.row, firstBlank.index),
                      column: places.column(firstBlank.row, firstBlank.index)
                    },
              message: `${blankCells} ${blankCells === 1 ? 'cell of a taxon is' : 'cells of taxa are'} empty, which may mean none or not recorded`,
              setsAside: false
            }
          ]
        : []
    return {...read, rows, problems: [...unclear, ...read.problems, ...problems]}
  }
  return {add, contents}
}

/** Words in a column of a wide table may mean that it is no column of counts. */
function remedyOf(
  remedy: string | undefined,
  written: string,
  taxon: string,
  map: ColumnMap
): {remedy?: string} {
  if (remedy !== undefined) return {remedy}
  if (/\d/.test(written)) return {}
  const line = mappingLine('catch', [`remarks: ${yamlText(taxon)}`], map)
  return {
    remedy: `write the number that was counted; if \`${taxon}\` is no animal but a column of notes, ${line}`
  }
}
