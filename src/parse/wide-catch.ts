import type {TableDescription} from '../model/columns.ts'
import type {Problem} from '../model/study.ts'
import {readCount} from './read-number.ts'
import type {Resolution} from './resolve-columns.ts'
import {type TableReader, type TableReaderSetup, type TypedRow, tableReader} from './table-reader.ts'

/** A catch table in which each taxon has a column of its own: one row per collection, or per site in old data. */
export function wideTable(long: TableDescription): TableDescription {
  return {...long, columns: long.columns.filter(({name}) => name !== 'taxon' && name !== 'count')}
}

/** Two columns that nobody knows beside a trap and a day, or a site, are names of animals, not slips of the pen. */
export function isWide({resolved, missing, unknown}: Resolution): boolean {
  const placed = resolved.some(({column}) => column.name === 'trap_id' || column.name === 'site_id')
  return missing.length === 0 && placed && unknown.length >= 2
}

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
  blanks: 'zero' | 'unknown' | undefined
): TableReader {
  const base = tableReader(setup)
  const {file, header, places, conventions} = setup
  const names = taxonColumns.map((index) => ({index, taxon: (header[index] ?? '').trim()}))
  const rows: TypedRow[] = []
  const problems: Problem[] = []
  let blankCells = 0
  const add: TableReader['add'] = (cells, line, raw, broken) => {
    const typed = base.add(cells, line, raw, broken)
    if (typed === undefined) return undefined
    const before = rows.length
    for (const {index, taxon} of names) {
      const text = (cells[index] ?? '').trim()
      if (text === '') {
        blankCells += 1
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
        cell: text
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
              place: {file},
              message: `${blankCells} ${blankCells === 1 ? 'cell of a taxon is' : 'cells of taxa are'} empty, which may mean none or not recorded`,
              setsAside: false
            }
          ]
        : []
    return {...read, rows, problems: [...unclear, ...read.problems, ...problems]}
  }
  return {add, contents}
}
