import type {TableName} from '../model/columns.ts'
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
  ) => AsyncIterable<readonly (readonly string[])[]>
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
}

export interface ColumnPlace {
  /** Cells that the column is made of. */
  readonly indexes: readonly number[]
  readonly text: (cells: readonly string[]) => string
}
