import type {TableDescription} from '../model/column.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {Problem, SourceTable} from '../model/study.ts'
import {CellPlaces} from './cell-places.ts'
import {type CsvBatch, csvRows} from './csv-rows.ts'
import {decodeText, type Encoding, encodingOfStart, NotUtf8} from './decode-text.ts'
import {delimiterOf} from './delimiter.ts'
import {findHeader, isComment} from './find-header.ts'
import {foreignStart} from './foreign-file.ts'
import {headerInTwoLines, missingColumns} from './missing-columns.ts'
import type {CellConventions} from './read-cell.ts'
import {type ColumnMap, namedHeaders} from './resolve-columns.ts'
import {isSeparatorRecord} from './separator-line.ts'
import {emptyFile, encodingGuessed, headerProblems, noText, passedOver} from './table-problems.ts'
import {type TypedRow, tableReader} from './table-reader.ts'
import {type OpenTable, sourceTable} from './table-source.ts'
import {wideCatchReader} from './wide-catch.ts'
import {findWideHeader, wideTable, wideTaxa} from './wide-header.ts'

/** A table that was read, or the reasons why nothing can be built from its file. */
export type TableOutcome = ReadTable | {readonly unreadable: readonly Problem[]}

export interface ReadTable {
  readonly source: SourceTable
  readonly rows: readonly TypedRow[]
  readonly problems: readonly Problem[]
}

/** Read one CSV file into typed rows. Never throws for what stands in the file. */
export async function readTable(
  study: StudySource,
  table: TableDescription,
  file: string,
  settings: Settings,
  conventions: CellConventions
): Promise<TableOutcome> {
  const map = settings.columns?.[table.name] ?? {}
  const foreign = await foreignStart(study, file)
  if (foreign !== undefined) return {unreadable: [noText(file, foreign)]}
  const encoding = settings.encoding ?? (await encodingOfFile(study, file))
  try {
    return await readWith(encoding)
  } catch (error) {
    if (!(error instanceof NotUtf8)) throw error
    const outcome = await readWith('windows-1252')
    return 'unreadable' in outcome
      ? outcome
      : {...outcome, problems: [encodingGuessed(file), ...outcome.problems]}
  }

  async function readWith(chosen: Encoding): Promise<TableOutcome> {
    const start = await firstText(study, file, chosen)
    if (start.trim() === '') return {unreadable: [emptyFile(file, table)]}
    const delimiter = delimiterOf(start, [...table.columns.map(({name}) => name), ...ownHeaders(map)])
    let open: OpenTable | undefined
    let forPeople = 0
    for await (const batch of csvRows(decodeText(study.read(file), chosen), delimiter)) {
      let first = 0
      if (open === undefined) {
        const opened = openTable(batch, delimiter)
        if (opened === undefined) continue
        if ('unreadable' in opened) return opened
        open = opened.open
        first = opened.firstRecord
        forPeople += opened.linesAbove
      }
      for (let record = first; record < batch.records.length; record++) {
        const cells = batch.records[record] as readonly string[]
        if (isComment(cells)) forPeople += 1
        else open.reader.add(cells, batch.line(record), batch.raw(record), batch.broken(record))
      }
    }
    if (open === undefined) return {unreadable: [emptyFile(file, table)]}
    const contents = open.reader.contents()
    return {
      source: sourceTable(table, file, open, contents, chosen, delimiter),
      rows: contents.rows,
      problems: [
        ...passedOver(file, forPeople, start),
        ...headerProblems(file, open, table, map),
        ...contents.problems
      ]
    }
  }

  function openTable(
    batch: CsvBatch,
    delimiter: string
  ):
    | {open: OpenTable; firstRecord: number; linesAbove: number}
    | {unreadable: readonly Problem[]}
    | undefined {
    const shape = table.name === 'catch' ? settings.catch?.shape : 'long'
    const asLong = shape === 'wide' ? undefined : findHeader(table, batch.records, map)
    const isLong = shape === 'long' || asLong?.resolution.missing.length === 0
    const asWide = isLong ? undefined : findWideHeader(table, batch.records, map, shape)
    const wide = asWide !== undefined
    const found = asWide ?? asLong
    if (found === undefined) return undefined
    const header = {cells: found.cells, line: batch.line(found.record)}
    const {missing, resolved} = found.resolution
    if (found.isSplit) return {unreadable: [headerInTwoLines(file, header, delimiter)]}
    if (missing.length > 0) return {unreadable: [missingColumns(file, header, table, found.resolution, map)]}
    const places = new CellPlaces(header.cells.length, delimiter)
    const taxonColumns = wide ? wideTaxa(found) : []
    const setup = {
      table: wide ? wideTable(table) : table,
      file,
      header: header.cells,
      resolved,
      conventions,
      places,
      ...(taxonColumns[0] !== undefined && {countsFrom: taxonColumns[0]})
    }
    const reader = wide
      ? wideCatchReader(setup, taxonColumns, settings.catch?.blanks, map)
      : tableReader(setup)
    const above = batch.records
      .slice(0, found.record)
      .filter((cells) => cells.some((cell) => cell.trim() !== '') && !isSeparatorRecord(cells))
    const open = {reader, header, places, taxonColumns, resolution: found.resolution}
    return {open, firstRecord: found.record + 1, linesAbove: above.length}
  }
}

/** Headers that study.yaml names as the study's own. */
function ownHeaders(map: ColumnMap): readonly string[] {
  return Object.values(map).flatMap(namedHeaders)
}

async function encodingOfFile(study: StudySource, file: string): Promise<Encoding> {
  for await (const bytes of study.read(file)) if (bytes.length > 0) return encodingOfStart(bytes)
  return 'utf-8'
}

/** Enough text to see the header and to tell the delimiter. */
async function firstText(study: StudySource, file: string, encoding: Encoding): Promise<string> {
  let text = ''
  for await (const chunk of decodeText(study.read(file), encoding)) {
    text += chunk
    if (text.length > 20_000) break
  }
  return text
}
