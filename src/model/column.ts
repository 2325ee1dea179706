export type TableName = 'sites' | 'traps' | 'visits' | 'catch' | 'taxa' | 'weather'

export type ColumnKind =
  | 'id' // an identifier, compared as written after trimming
  | 'text'
  | 'day'
  | 'moment' // a day with an optional time
  | 'count' // a whole number, 0 or more
  | 'number'
  | 'fraction' // above 0, up to 1
  | 'latitude'
  | 'longitude'
  | 'word' // one of a fixed list

export interface Column {
  readonly name: string
  readonly kind: ColumnKind
  /** The column must be there, and its cells filled. */
  readonly required?: boolean
  /** A required column whose cell may be empty all the same: a rule then says what follows. */
  readonly mayBeEmpty?: boolean
  /** An unreadable cell sets its row aside, even where the column is optional: a guess would change a number. */
  readonly decisive?: boolean
  readonly unit?: string
  readonly words?: readonly string[]
  /** Words that a study adds in study.yaml are known too. */
  readonly ownWords?: boolean
  /** The words are numbers. */
  readonly isNumber?: boolean
  /** What an entomologist means by leaving a cell empty, or the column out. */
  readonly emptyMeans?: string
  /** For the data dictionary: one sentence without its full stop. */
  readonly meaning: string
  /** What people head such a column with. Never read as it, only asked about: a guess would change a number. */
  readonly otherHeads?: readonly string[]
}

export interface TableDescription {
  readonly name: TableName
  readonly file: string
  /** What one row is, for the data dictionary. */
  readonly row: string
  readonly optional?: boolean
  readonly columns: readonly Column[]
}
