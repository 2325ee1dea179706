import type {StudySource} from '../../model/source.ts'
import type {SourceTable} from '../../model/study.ts'
import type {Reading} from '../reading.ts'
import type {TableEdit} from './cell-edits.ts'
import {encodeText, startOf} from './encode-text.ts'

const chunkLength = 64 * 1024

/**
 * A CSV file with some of its cells changed: every other record as it was, in the same encoding and dialect, with
 * line feeds. A record whose quotes do not close stays such a record, so that the check says of it what it said.
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
  for await (const {records, raw, broken} of reading.records(source, file, encoding, delimiter)) {
    for (const [index, record] of records.entries()) {
      // The reader sees one blank record more at the end of a file that ends its last line.
      if (record.length === 1 && record[0] === '') {
        blanks += '\n'
        continue
      }
      let line: string
      if (edit === undefined && isHeader(record)) {
        edit = editFor(record)
        line = edited(record, edit.header, raw(index), delimiter)
      } else if (edit === undefined) line = written(record, raw(index), delimiter)
      else if (broken(index)) line = crossedOut(record, delimiter)
      else line = edited(record, edit.record, raw(index), delimiter)
      text += `${blanks}${line}\n`
      blanks = ''
      if (text.length < chunkLength) continue
      yield encodeText(text, encoding)
      text = ''
    }
  }
  if (text !== '') yield encodeText(text, encoding)
}

function edited(
  record: readonly string[],
  edit: TableEdit['record'],
  raw: string | undefined,
  delimiter: string
): string {
  const cells = [...record]
  edit(cells)
  const isSame = cells.every((cell, index) => cell === record[index])
  return isSame
    ? written(record, raw, delimiter)
    : cells.map((cell) => quoted(cell, delimiter)).join(delimiter)
}

function written(record: readonly string[], raw: string | undefined, delimiter: string): string {
  return raw === undefined ? record.join(delimiter) : raw.replace(/\n$/, '')
}

function quoted(cell: string, delimiter: string): string {
  const needsQuotes = cell.includes(delimiter) || /["\n]/.test(cell)
  return needsQuotes ? `"${cell.replaceAll('"', '""')}"` : cell
}

/** What stands in a broken record cannot be told apart, so nothing of it is shown but its id and its quotes. */
function crossedOut(pieces: readonly string[], delimiter: string): string {
  const [id = '', ...rest] = pieces
  const hide = (piece: string): string => piece.replace(/[\p{L}\p{N}]/gu, 'x')
  return [id.includes('"') ? hide(id) : id, ...rest.map(hide)].join(delimiter)
}
