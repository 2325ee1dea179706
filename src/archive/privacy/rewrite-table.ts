import type {StudySource} from '../../model/source.ts'
import type {SourceTable} from '../../model/study.ts'
import type {Reading} from '../reading.ts'
import type {TableEdit} from './cell-edits.ts'
import {encodeText, startOf} from './encode-text.ts'

const chunkLength = 64 * 1024

/**
 * A CSV file with some of its cells changed: every other record as it was, in the same encoding and dialect, with
 * line feeds.
 */
export async function* rewriteTable(
  source: StudySource,
  {file, encoding, delimiter}: Pick<SourceTable, 'file' | 'encoding' | 'delimiter'>,
  isHeader: (cells: readonly string[]) => boolean,
  editFor: (header: readonly string[]) => TableEdit,
  reading: Reading
): AsyncIterable<Uint8Array> {
  let text = startOf(encoding)
  let edit: TableEdit | undefined
  let blanks = ''
  for await (const records of reading.records(source, file, encoding, delimiter)) {
    for (const record of records) {
      // The reader sees one blank record more at the end of a file that ends its last line.
      if (record.length === 1 && record[0] === '') {
        blanks += '\n'
        continue
      }
      const cells = [...record]
      if (edit !== undefined) edit.record(cells)
      else if (isHeader(record)) {
        edit = editFor(record)
        edit.header(cells)
      }
      text += `${blanks}${cells.map((cell) => quoted(cell, delimiter)).join(delimiter)}\n`
      blanks = ''
      if (text.length < chunkLength) continue
      yield encodeText(text, encoding)
      text = ''
    }
  }
  if (text !== '') yield encodeText(text, encoding)
}

function quoted(cell: string, delimiter: string): string {
  const needsQuotes = cell.includes(delimiter) || /["\n]/.test(cell)
  return needsQuotes ? `"${cell.replaceAll('"', '""')}"` : cell
}
