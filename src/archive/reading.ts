import type {TableName} from '../model/column.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'

/**
 * What the archive needs of the reader of a study, handed in so that files are taken apart here exactly as there,
 * and by the same code.
 */
export interface Reading {
  /** Records of a CSV file in batches: every line of it, titles, header, comments and blank lines too. */
  readonly records: (
    source: StudySource,
    file: string,
    encoding: string,
    delimiter: string
  ) => AsyncIterable<RecordBatch>
  /** The text of a file in chunks, with every line ending as a line feed. */
  readonly chunks: (source: StudySource, file: string, encoding: string) => AsyncIterable<string>
  /** Where the columns of a table stand in a header, by their usual names. */
  readonly columns: (
    table: TableName,
    header: readonly string[],
    settings: Settings
  ) => ReadonlyMap<string, ColumnPlace>
  /** The name that a text in a taxon cell is taken for. */
  readonly settle: (
    known: readonly {readonly taxon: string}[]
  ) => (written: string) => {readonly taxon: string; readonly qualifier?: string}
  /** A whole text file. */
  readonly text: (source: StudySource, file: string) => Promise<string>
  /** A whole file as it is, of the size of a picture in a report. */
  readonly bytes: (source: StudySource, file: string) => Promise<Uint8Array>
  /** A picture without what a camera writes beside it. */
  readonly pictureForOthers: (path: string, bytes: Uint8Array) => Uint8Array
}

/** Records that were found together. */
export interface RecordBatch {
  readonly records: readonly (readonly string[])[]
  /** The record as written, where quotes keep its cells from telling. */
  readonly raw: (record: number) => string | undefined
  /** Whether its quotes do not close, so that its cells are the pieces of one line. */
  readonly broken: (record: number) => boolean
}

export interface ColumnPlace {
  /** Cells that the column is made of. */
  readonly indexes: readonly number[]
  readonly text: (cells: readonly string[]) => string
}
