import type {TableDescription} from '../model/column.ts'
import type {Problem} from '../model/study.ts'
import type {ForeignFile} from './foreign-file.ts'
import {mappingLine} from './missing-columns.ts'
import type {ColumnMap} from './resolve-columns.ts'
import {separatorLine} from './separator-line.ts'
import {headerPlace, type OpenTable} from './table-source.ts'
import {mayBeTotal} from './totals.ts'
import {yamlText} from './yaml-text.ts'

export function headerProblems(
  file: string,
  {header, resolution, taxonColumns}: OpenTable,
  table: TableDescription,
  map: ColumnMap
): readonly Problem[] {
  const written = (index: number): string => (header.cells[index] ?? '').trim()
  const unknown = resolution.unknown.filter(({index}) => !taxonColumns.includes(index))
  // A slip of the pen is named by itself; columns that are plainly somebody's own are named together.
  const slips = unknown.filter(({index, hint}) => hint !== undefined && !mayBeTotal(written(index)))
  const sums = unknown.filter(({index}) => mayBeTotal(written(index)))
  const own = unknown
    .filter(({index, hint}) => hint === undefined && !mayBeTotal(written(index)))
    .map(({index}) => index)
  const totals = sums.map(
    ({index}): Problem => ({
      code: 'unknown-column',
      place: headerPlace(file, header, index),
      message: `\`${written(index)}\` is a column of sums; it is used for nothing`,
      remedy: 'nothing; sums are worked out anew',
      setsAside: false
    })
  )
  const slipped = slips.map(
    ({index, hint}): Problem => ({
      code: 'unknown-column',
      place: headerPlace(file, header, index),
      message: `\`${written(index)}\` is not a column of ${table.file}; it is used for nothing`,
      remedy: `did you mean \`${hint}\`? If so, rename it or ${mappingLine(table.name, [`${hint}: ${yamlText(written(index))}`], map)}`,
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
  return [...slipped, ...totals, ...ownColumns, ...duplicated]
}

export function emptyFile(file: string, table: TableDescription): Problem {
  const required = table.columns.filter((column) => column.required).map(({name}) => name)
  return {
    code: 'missing-table',
    place: {file},
    message: 'the file is empty: not even a header',
    remedy: table.optional
      ? `a study can do without ${table.file}: delete the empty file, or give it a header that begins with ${required.join(',')}`
      : `give it the header of ${table.file}: ${required.join(',')}`,
    setsAside: false
  }
}

export function noText(file: string, {what, remedy}: ForeignFile): Problem {
  return {
    code: 'missing-table',
    place: {file},
    message: `this is ${what}, whatever its name says; only text files can be read`,
    remedy,
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

/** What of a file was read as no row: titles and comments, and a first line for spreadsheet programs. */
export function passedOver(file: string, lines: number, start: string): readonly Problem[] {
  const problem = (message: string, line?: number, remedy?: string): Problem => ({
    code: 'lines-passed-over',
    place: {file, ...(line !== undefined && {line})},
    message,
    ...(remedy !== undefined && {remedy}),
    setsAside: false
  })
  const sign = separatorLine(start)
  return [
    ...(sign === undefined
      ? []
      : [
          problem(
            `\`sep=${sign === '\t' ? 'tab' : sign}\` tells spreadsheet programs what separates the cells; the file was read so`,
            1,
            'nothing; the line is no row and does no harm'
          )
        ]),
    ...(lines === 0
      ? []
      : [
          problem(
            `${lines} ${lines === 1 ? 'line is a title or comment and was' : 'lines are titles or comments and were'} passed over`
          )
        ])
  ]
}
