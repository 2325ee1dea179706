import type {TableName} from './column.ts'
import type {Place} from './place.ts'

/** error: a row cannot be used; caution: used, but a reader should know; note: worth a look. */
export type Severity = 'error' | 'caution' | 'note'

/** One row of one table, counted from 0 in the order of the file. */
export interface RowReference {
  readonly table: TableName
  readonly row: number
}

/** Something worth telling about a study: where, what, why it matters for the report, and how to mend it. */
export interface Finding {
  readonly code: string
  readonly severity: Severity
  readonly place: Place
  /** What is wrong: lower case, no full stop, with the value found and the value expected. */
  readonly message: string
  /** What happens to the report when this is ignored. */
  readonly why: string
  /** What to do about it: an instruction. */
  readonly remedy: string
  /** The cell as it is written, where the finding is about one. */
  readonly cell?: string
  /** Other places that belong to the same finding: the first use of a duplicated id, for example. */
  readonly related?: readonly {readonly place: Place; readonly message: string}[]
  /** The rows that this finding sets aside. */
  readonly setsAside?: readonly RowReference[]
}

/** What became of the rows of one table: read = used + set aside. */
export interface RowBalance {
  readonly table: TableName
  readonly file: string
  /** Encoding and separator that the file was read with, in words. */
  readonly readAs: string
  readonly read: number
  readonly used: number
  readonly setAside: number
  /** Rows set aside, by the code of the finding that did it. */
  readonly byCode: Readonly<Record<string, number>>
}

/** A rule that the study judges otherwise than pitfolio does, with its reason: printed beside the findings. */
export interface JudgedOtherwise {
  readonly code: string
  readonly severity: Severity | 'silent'
  readonly reason: string
  /** How many findings of it there were. */
  readonly findings: number
}
