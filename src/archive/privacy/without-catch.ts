import type {StudySource} from '../../model/source.ts'
import type {SourceTable, Study} from '../../model/study.ts'
import type {Reading} from '../reading.ts'
import {headerTest} from '../table-header.ts'
import {encodeText, startOf} from './encode-text.ts'
import type {PrivateMatters} from './private-matters.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/**
 * Whether a copy differs from its original in positions alone, and the catch has no say in them: then the numbers that
 * hang on positions can be told without the catch, which may be a million rows.
 */
export function hangsOnPositionsAlone(
  study: Study,
  {names}: StudyPrivacy,
  {names: namesHidden}: PrivateMatters
): boolean {
  const table = study.tables.catch
  if (table === undefined || namesHidden) return false
  const isShared = Object.values(study.tables).some((other) => other !== table && other.file === table.file)
  const decidesOnPositions = names.names.some(({sensitive}) => sensitive !== undefined)
  return !isShared && !decidesOnPositions && table.unknownHeaders.length === 0
}

/** A study folder whose table of the catch ends with its header. */
export function withoutCatch(source: StudySource, catchTable: SourceTable, reading: Reading): StudySource {
  return {
    files: source.files,
    read: (path) => (path === catchTable.file ? headerOnly(source, catchTable, reading) : source.read(path))
  }
}

async function* headerOnly(
  source: StudySource,
  table: SourceTable,
  reading: Reading
): AsyncIterable<Uint8Array> {
  const {file, encoding, delimiter} = table
  const isHeader = headerTest(table)
  let text = startOf(encoding)
  for await (const {records, raw} of reading.records(source, file, encoding, delimiter)) {
    for (const [index, record] of records.entries()) {
      text += `${(raw(index) ?? record.join(delimiter)).replace(/\n$/, '')}\n`
      if (!isHeader(record)) continue
      yield encodeText(text, encoding)
      return
    }
  }
}
