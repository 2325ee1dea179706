import type {Figure} from '../charts/chart.ts'
import type {Finding} from '../model/finding.ts'
import type {Language} from '../model/format-date.ts'
import type {Measure} from '../model/quantity.ts'
import type {Results} from '../model/results.ts'
import type {Work} from './work.ts'

/** What a cell of a report table may hold; how it is printed is decided in one place for all documents. */
export type Cell =
  | {readonly type: 'measure'; readonly measure: Measure}
  /** The low and high end of a measure's interval. */
  | {readonly type: 'interval'; readonly measure: Measure}
  /** `marked`: of our own words, in which what stands between backticks is a piece of a file. */
  | {readonly type: 'text'; readonly text: string; readonly marked?: true}
  | {readonly type: 'date'; readonly day: string}
  | {
      readonly type: 'taxon'
      readonly taxon: string
      readonly rank?: string | undefined
      readonly authority?: string | undefined
    }
  | {readonly type: 'place'; readonly place: string}
  | {readonly type: 'blank'}

export interface TableColumn {
  readonly head: string
  /** Unit printed in the head, for example 'trap-nights'. */
  readonly unit?: string
  readonly align: 'left' | 'right'
  /** Row headers for screen readers; the first column where none says so. */
  readonly rowHead?: boolean
  /**
   * Words that most rows share and that tell of the column before: documents say them once below the table, the file
   * of the table has them in every row.
   */
  readonly asNotes?: boolean
}

export interface ReportTable {
  /** File name without ending, for example `taxa-by-habitat`. */
  readonly name: string
  readonly columns: readonly TableColumn[]
  readonly rows: readonly (readonly Cell[])[]
  /** Totals and the like, set apart below the rows. */
  readonly foot?: readonly (readonly Cell[])[]
  /** Said instead of a table that has no rows. */
  readonly empty: string
  /** Style of the dates in its cells; en-GB where absent. */
  readonly language?: Language
}

/** What a table is made from. */
export interface TableSource {
  readonly results: Results
  readonly findings: readonly Finding[]
  /** Figures and works that can be called, for the tables that list them. */
  readonly figures?: readonly Pick<Figure, 'name' | 'title'>[]
  readonly works?: readonly Work[]
}

export interface TableDefinition {
  /** Name that templates call. */
  readonly name: string
  readonly summary: string
  /** The tables of this definition: one, or one for each scope or site (then named `<name>-<id>`). */
  tables(source: TableSource): readonly ReportTable[]
}
