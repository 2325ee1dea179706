import type {TableDescription} from '../model/columns.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {Problem, SourceTable} from '../model/study.ts'
import {CellPlaces} from './cell-places.ts'
import {csvRows} from './csv-rows.ts'
import {decodeText, type Encoding, encodingOfStart, NotUtf8} from './decode-text.ts'
import {delimiterOf} from './delimiter.ts'
import type {CellConventions} from './read-cell.ts'
import {type Resolution, resolveColumns} from './resolve-columns.ts'
import {type TableContents, type TypedRow, tableReader} from './table-reader.ts'

/** A table that was read, or the reasons why nothing can be built from its file. */
export type TableOutcome =
  | {readonly source: SourceTable; readonly rows: readonly TypedRow[]; readonly problems: readonly Problem[]}
  | {readonly unreadable: readonly Problem[]}

/** Read one CSV file into typed rows. Never throws for what stands in the file. */
export async function readTable(
  study: StudySource,
  table: TableDescription,
  file: string,
  settings: Settings,
  conventions: CellConventions
): Promise<TableOutcome> {
  const encoding = settings.encoding ?? (await encodingOfFile(study, file))
  try {
    return await readWith(encoding)
  } catch (error) {
    if (!(error instanceof NotUtf8)) throw error
    const outcome = await readWith('windows-1252')
    return 'unreadable' in outcome ? outcome : {...outcome, problems: [encodingGuessed(file), ...outcome.problems]}
  }

  async function readWith(chosen: Encoding): Promise<TableOutcome> {
    const first = await firstText(study, file, chosen)
    const header = headerLine(first)
    if (header === undefined) return {unreadable: [emptyFile(file, table)]}
    const delimiter = delimiterOf(header, [...table.columns.map(({name}) => name), ...ownHeaders(settings.columns?.[table.name])])
    return readRecords(chosen, delimiter)
  }

  async function readRecords(chosen: Encoding, delimiter: string): Promise<TableOutcome> {
    let open: OpenTable | undefined
    for await (const batch of csvRows(decodeText(study.read(file), chosen), delimiter)) {
      for (const [record, cells] of batch.records.entries()) {
        if (open !== undefined) {
          open.reader.add(cells, batch.line(record), batch.raw(record), batch.broken(record))
          continue
        }
        if (cells.every((cell) => cell.trim() === '')) continue
        const header = {cells: cells.slice(0, trimmedWidth(cells)), line: batch.line(record)}
        const resolution = resolveColumns(table, header.cells, settings.columns?.[table.name])
        if (resolution.missing.length > 0) return {unreadable: resolution.missing.map((missing) => missingColumn(file, header, missing))}
        const places = new CellPlaces(header.cells.length, delimiter)
        const setup = {table, file, header: header.cells, resolved: resolution.resolved, conventions, places}
        open = {reader: tableReader(setup), resolution, header, places}
      }
    }
    if (open === undefined) return {unreadable: [emptyFile(file, table)]}
    const contents = open.reader.contents()
    const source = sourceTable(table, file, open, contents, chosen, delimiter)
    return {source, rows: contents.rows, problems: [...headerProblems(file, open.header, open.resolution, table), ...contents.problems]}
  }
}

interface Header {
  readonly cells: readonly string[]
  readonly line: number
}

interface OpenTable {
  readonly reader: ReturnType<typeof tableReader>
  readonly resolution: Resolution
  readonly header: Header
  readonly places: CellPlaces
}

/** Headers that study.yaml names as the study's own. */
function ownHeaders(map: NonNullable<Settings['columns']>['sites'] = {}): readonly string[] {
  return Object.values(map).flatMap((source) => {
    if (typeof source === 'string') return [source]
    if ('join' in source) return source.join
    return 'first_of' in source ? source.first_of : []
  })
}

/** Columns of the header, less the empty ones that spreadsheets leave behind on the right. */
function trimmedWidth(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell.trim() !== '') + 1
}

async function encodingOfFile(study: StudySource, file: string): Promise<Encoding> {
  for await (const bytes of study.read(file)) if (bytes.length > 0) return encodingOfStart(bytes)
  return 'utf-8'
}

/** Enough text to see the header line. */
async function firstText(study: StudySource, file: string, encoding: Encoding): Promise<string> {
  let text = ''
  for await (const chunk of decodeText(study.read(file), encoding)) {
    text += chunk
    if (text.length > 100_000 || /\S[^\n]*\n/.test(text)) break
  }
  return text
}

function headerLine(text: string): string | undefined {
  return text.split('\n').find((line) => line.trim() !== '')
}

function sourceTable(
  table: TableDescription,
  file: string,
  open: OpenTable,
  contents: TableContents,
  encoding: string,
  delimiter: string
): SourceTable {
  const columns = new Map(
    open.resolution.resolved.map(({column, index}) => [column.name, {header: open.header.cells[index] ?? column.name, index}])
  )
  return {
    name: table.name,
    file,
    columns,
    unknownHeaders: open.resolution.unknown.map(({index}) => ({
      header: (open.header.cells[index] ?? '').trim(),
      place: headerPlace(file, open.header, index)
    })),
    rowsRead: contents.rowsRead,
    unusableIds: contents.unusableIds,
    encoding,
    delimiter,
    place(row, column) {
      const index = column === undefined ? undefined : columns.get(column)?.index
      if (index === undefined) return {file, line: open.places.line(row)}
      return {file, line: open.places.line(row, index), column: open.places.column(row, index)}
    }
  }
}

function headerPlace(file: string, header: Header, index: number): {file: string; line: number; column: number} {
  const places = new CellPlaces(header.cells.length, ',')
  places.add(header.line, header.cells, undefined)
  return {file, line: header.line, column: places.column(0, index)}
}

function headerProblems(file: string, header: Header, resolution: Resolution, table: TableDescription): readonly Problem[] {
  const unknown = resolution.unknown.map(({index, hint}): Problem => ({
    code: 'unknown-column',
    place: headerPlace(file, header, index),
    message: `\`${(header.cells[index] ?? '').trim()}\` is not a column of ${table.file}; it is used for nothing`,
    ...(hint !== undefined && {remedy: `did you mean \`${hint}\`?`}),
    setsAside: false
  }))
  const duplicated = resolution.duplicated.map(({index, first}): Problem => ({
    code: 'duplicate-column',
    place: headerPlace(file, header, index),
    message: `\`${(header.cells[index] ?? '').trim()}\` stands twice in the header; the first, column ${first + 1}, is read`,
    setsAside: false
  }))
  return [...unknown, ...duplicated]
}

function missingColumn(file: string, header: Header, missing: {readonly column: string; readonly hint?: string}): Problem {
  const hint = missing.hint === undefined ? '' : `is \`${missing.hint.trim()}\` that column? If so, `
  return {
    code: 'missing-column',
    place: {file, line: header.line},
    message: `column \`${missing.column}\` is missing`,
    remedy: `${hint}rename the header, or name yours under \`columns:\` in study.yaml`,
    setsAside: false
  }
}

function encodingGuessed(file: string): Problem {
  return {
    code: 'encoding-guessed',
    place: {file},
    message: 'the bytes are not UTF-8, so the file was read as Windows-1252',
    setsAside: false
  }
}

function emptyFile(file: string, table: TableDescription): Problem {
  return {
    code: 'missing-table',
    place: {file},
    message: 'the file is empty: not even a header',
    remedy: `give it the header of ${table.file}: ${table.columns.filter(({required}) => required).map(({name}) => name).join(',')}`,
    setsAside: false
  }
}
