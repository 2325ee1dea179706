import {tables} from '../model/columns.ts'
import type {StudySource} from '../model/source.ts'
import type {SourceTable} from '../model/study.ts'
import {profileTable} from './data-package/column-profile.ts'
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
    const records = reading.records(source, path, encoding, delimiter)
    const profile = await profileTable(records, isHeader, telling(sources))
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
