import type {TableDescription, TableName} from '../model/columns.ts'
import type {Problem} from '../model/study.ts'
import type {MissingColumn} from './resolve-columns.ts'
import {headerPlace, type OpenTable} from './table-source.ts'

export function headerProblems(
  file: string,
  {header, resolution, taxonColumns}: OpenTable,
  table: TableDescription
): readonly Problem[] {
  const written = (index: number): string => (header.cells[index] ?? '').trim()
  const unknown = resolution.unknown.filter(({index}) => !taxonColumns.includes(index))
  // A slip of the pen is named by itself; columns that are plainly somebody's own are named together.
  const slips = unknown.filter(({hint}) => hint !== undefined)
  const own = unknown.filter(({hint}) => hint === undefined).map(({index}) => index)
  const slipped = slips.map(
    ({index, hint}): Problem => ({
      code: 'unknown-column',
      place: headerPlace(file, header, index),
      message: `\`${written(index)}\` is not a column of ${table.file}; it is used for nothing`,
      remedy: `did you mean \`${hint}\`?`,
      setsAside: false
    })
  )
  const named = own.map((index) => `\`${written(index)}\``).join(', ')
  const ownColumns: readonly Problem[] =
    own.length === 0
      ? []
      : [
          {
            code: 'unknown-column',
            place: headerPlace(file, header, own[0] ?? 0),
            message: `${own.length === 1 ? 'column' : `${own.length} columns`} of your own used for nothing: ${named}`,
            setsAside: false
          }
        ]
  const duplicated = resolution.duplicated.map(
    ({index, first}): Problem => ({
      code: 'duplicate-column',
      place: headerPlace(file, header, index),
      message: `\`${written(index)}\` stands twice in the header; the first, column ${first + 1}, is read`,
      setsAside: false
    })
  )
  return [...slipped, ...ownColumns, ...duplicated]
}

export function missingColumn(
  file: string,
  line: number,
  table: TableName,
  {column, hint, named = []}: MissingColumn
): Problem {
  const list = named.map((name) => `\`${name}\``).join(' and ')
  const message =
    named.length === 0
      ? `column \`${column}\` is missing`
      : `column \`${column}\` is missing: study.yaml says that it is ${list}, and no header says so`
  const remedy =
    hint === undefined
      ? 'rename the header, or name yours under `columns:` in study.yaml'
      : `is \`${hint.trim()}\` that column? If so, say \`columns: {${table}: {${column}: ${yamlText(hint.trim())}}}\` in study.yaml`
  return {code: 'missing-column', place: {file, line}, message, remedy, setsAside: false}
}

export function emptyFile(file: string, table: TableDescription): Problem {
  const required = table.columns.filter((column) => column.required).map(({name}) => name)
  return {
    code: 'missing-table',
    place: {file},
    message: 'the file is empty: not even a header',
    remedy: `give it the header of ${table.file}: ${required.join(',')}`,
    setsAside: false
  }
}

export function encodingGuessed(file: string): Problem {
  return {
    code: 'encoding-guessed',
    place: {file},
    message: 'the bytes are not UTF-8, so the file was read as Windows-1252',
    setsAside: false
  }
}

export function linesForPeople(file: string, lines: number): readonly Problem[] {
  if (lines === 0) return []
  const message = `${lines} ${lines === 1 ? 'line is a title or comment and was' : 'lines are titles or comments and were'} passed over`
  return [{code: 'lines-passed-over', place: {file}, message, setsAside: false}]
}

/** A header as it stands in a line of YAML. */
function yamlText(header: string): string {
  return /^[\p{L}][\p{L}\p{N} _-]*$/u.test(header) ? header : JSON.stringify(header)
}
