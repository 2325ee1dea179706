import {tables} from '../model/columns.ts'
import type {StudySource} from '../model/source.ts'
import type {SourceTable} from '../model/study.ts'
import {profilePlainText, type TableProfile, TableProfiler} from './data-package/table-profile.ts'
import type {DescribedTable} from './data-package.ts'
import {fileTitle} from './file-kinds.ts'
import type {Reading} from './reading.ts'
import {headerTest} from './table-header.ts'

/**
 * Every CSV file below `raw/` that a table of the study was read from, and every one of the report, with what its
 * columns have in common.
 */
export async function describeTables(
  source: StudySource,
  sourceTables: readonly SourceTable[],
  reading: Reading
): Promise<readonly DescribedTable[]> {
  const described: DescribedTable[] = []
  for (const path of source.files.keys()) {
    const sources = sourceTables.filter(({file}) => path === `raw/${file}`)
    const isReport = path.startsWith('report/') && path.endsWith('.csv')
    if (sources.length === 0 && !isReport) continue
    const {encoding, delimiter} = sources[0] ?? {encoding: 'utf-8', delimiter: ','}
    const isHeader = sources[0] === undefined ? () => true : headerTest(sources[0])
    const profile = await profileOf(source, path, {encoding, delimiter}, isHeader, telling(sources), reading)
    if (profile === undefined) continue
    const lineTerminator = await lineTerminatorOf(source, path)
    described.push({
      path,
      title: fileTitle(path, sources),
      profile,
      encoding,
      delimiter,
      lineTerminator,
      sources
    })
  }
  return described
}

async function profileOf(
  source: StudySource,
  path: string,
  {encoding, delimiter}: Pick<SourceTable, 'encoding' | 'delimiter'>,
  isHeader: (cells: readonly string[]) => boolean,
  wanted: ReadonlySet<number>,
  reading: Reading
): Promise<TableProfile | undefined> {
  const plain = new TableProfiler(isHeader, wanted)
  if (await profilePlainText(reading.chunks(source, path, encoding), delimiter, plain)) return plain.profile()
  const profiler = new TableProfiler(isHeader, wanted)
  for await (const {records} of reading.records(source, path, encoding, delimiter))
    for (const cells of records) profiler.add(cells)
  return profiler.profile()
}

/** How the first line ends, whatever the width of a sign. */
async function lineTerminatorOf(source: StudySource, path: string): Promise<string> {
  let before: number | undefined
  for await (const chunk of source.read(path)) {
    for (const byte of chunk) {
      if (byte === 0x0a) return before === 0x0d ? '\r\n' : '\n'
      if (byte !== 0) before = byte
    }
  }
  return before === 0x0d ? '\r' : '\n'
}

/** Columns whose cells are names or words: what keys and lists of words are made of. */
function telling(sources: readonly SourceTable[]): ReadonlySet<number> {
  return new Set(
    sources.flatMap(({name, columns}) =>
      tables[name].columns
        .filter(({kind, name: column}) => kind === 'id' || kind === 'word' || column === 'date')
        .flatMap(({name: column}) => columns.get(column)?.index ?? [])
    )
  )
}
