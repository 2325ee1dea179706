import type {TableName} from './column.ts'
import type {ConditionWord, SampleWord} from './column-words.ts'
import type {Day, Moment} from './day.ts'
import type {Finding, JudgedOtherwise, RowBalance} from './finding.ts'
import type {Place} from './place.ts'
import type {Settings} from './settings.ts'

/** A row of a table, typed; `row` counts the data rows of its file from 0 and finds its places again. */
interface Row {
  readonly row: number
}

export interface Site extends Row {
  readonly siteId: string
  readonly habitat: string
  readonly siteName?: string
  readonly country?: string
  readonly region?: string
  readonly locality?: string
  readonly latitude?: number
  readonly longitude?: number
  readonly datum?: string
  readonly coordinateUncertaintyM?: number
  readonly elevationM?: number
  readonly block?: string
  readonly owner?: string
  readonly coordinatesShown?: CoordinatesShown
  readonly management?: string
  readonly soil?: string
  readonly vegetationHeightCm?: number
  readonly litterDepthMm?: number
  readonly bareGroundPercent?: number
  readonly canopyPercent?: number
  readonly edgeDistanceM?: number
  readonly traps?: number
  readonly trapNights?: number
  readonly remarks?: string
}

export type CoordinatesShown = 'exact' | '0.001' | '0.01' | '0.1' | 'none'

export interface Trap extends Row {
  readonly trapId: string
  readonly siteId: string
  readonly trapType?: string
  readonly fluid?: string
  readonly latitude?: number
  readonly longitude?: number
  readonly xM?: number
  readonly yM?: number
  readonly installed?: Day
  readonly removed?: Day
  readonly remarks?: string
}

/** One trap open from one moment to another: the unit of effort. */
export interface Exposure extends Row {
  readonly trapId: string
  /** Absent when nobody wrote it down: the catch then stays outside the effort. */
  readonly opened?: Moment
  readonly collected: Moment
  /** Trap-nights of a whole site and season, where old data give no more than that figure. */
  readonly statedNights?: number
  /** One of the usual words or one of the study's own (`conditions` in study.yaml); intact where the cell is empty. */
  readonly condition: ConditionWord | (string & {})
  readonly failedOn?: Moment
  readonly sample?: SampleWord
  readonly round?: string
  readonly rim?: 'flush' | 'sunken' | 'proud'
  readonly fluid?: string
  readonly fluidLeftMm?: number
  readonly coverState?: string
  readonly collectedBy?: string
  readonly sortedBy?: string
  readonly sortedOn?: Day
  readonly vertebratesCount?: number
  readonly vertebratesWhat?: string
  readonly vertebratesFate?: string
  readonly remarks?: string
}

export interface CatchRecord extends Row {
  /** Absent for a catch pooled in the field, which names its site and round instead. */
  readonly trapId?: string
  /** Always there with a trap; may be absent for a pooled catch. */
  readonly collected?: Moment
  readonly siteId?: string
  readonly round?: string
  /** How many traps were tipped together. */
  readonly pooledTraps?: number
  readonly taxon: string
  readonly count: number
  readonly sex?: 'female' | 'male' | 'undetermined'
  /** Adult where the cell is empty. */
  readonly lifeStage: string
  readonly wingForm?: string
  readonly qualifier?: string
  readonly identifiedBy?: string
  readonly identifiedOn?: Day
  readonly verifiedBy?: string
  /** Part of the sample that was sorted, above 0 and up to 1; 1 where the cell is empty. */
  readonly sampleFraction: number
  /** There where the cell is filled, so that a 1 that was written can be told from an empty cell. */
  readonly sampleFractionStated?: true
  readonly vial?: string
  readonly voucher?: string
  readonly remarks?: string
}

export interface Taxon extends Row {
  readonly taxon: string
  readonly rank?: string
  readonly class?: string
  readonly order?: string
  readonly family?: string
  readonly genus?: string
  readonly authority?: string
  readonly englishName?: string
  readonly guild?: string
  readonly bodyLengthMm?: number
  readonly redList?: string
  readonly legalStatus?: string
  /** Chapman (2020): 1 extreme, 2 high, 3 medium, 4 low. */
  readonly sensitive?: 1 | 2 | 3 | 4
  readonly acceptedName?: string
  readonly note?: string
}

export interface WeatherDay extends Row {
  readonly day: Day
  readonly rainMm?: number
  readonly tempMinC?: number
  readonly tempMaxC?: number
}

/** The file behind a table, and the places of its cells. */
export interface SourceTable {
  readonly name: TableName
  readonly file: string
  /** Columns that were recognised, by canonical name, with the header as written. */
  readonly columns: ReadonlyMap<string, {readonly header: string; readonly index: number}>
  /** Headers that mean nothing to pitfolio: kept in the archive, used for nothing. */
  readonly unknownHeaders: readonly {readonly header: string; readonly place: Place}[]
  readonly rowsRead: number
  /** Ids (first column) of rows that could not be typed, so that rows which name them are not called unknown. */
  readonly unusableIds: ReadonlyMap<string, number>
  readonly encoding: string
  readonly delimiter: string
  /** Place of a row, or of one of its cells by canonical column name. */
  place(row: number, column?: string): Place
}

/**
 * What the reader could not turn into a value. The reader never throws for a user's data and never guesses:
 * a rule of the same code turns each problem into a finding.
 */
export interface Problem {
  readonly code: ProblemCode
  readonly place: Place
  readonly message: string
  readonly remedy?: string
  readonly cell?: string
  readonly table?: TableName
  readonly row?: number
  /** Whether the row cannot be used because of it. */
  readonly setsAside: boolean
}

export type ProblemCode =
  | 'missing-table'
  | 'missing-column'
  | 'unknown-column'
  | 'duplicate-column'
  | 'ragged-row'
  | 'unclosed-quote'
  | 'encoding-guessed'
  | 'lines-passed-over'
  | 'totals-row'
  | 'nameless-column'
  | 'blank-cells'
  | 'cells-disagree'
  | 'name-settled'
  | 'empty-required-cell'
  | 'ambiguous-date'
  | 'unreadable-date'
  | 'unreadable-number'
  | 'ambiguous-number'
  | 'count-not-whole'
  | 'coordinate-off-the-map'
  | 'unknown-word'
  | 'unknown-condition'
  | 'invalid-setting'
  | 'unknown-setting'

/** A study folder, read. Rows that could not be typed are in `problems`, not in the lists. */
export interface Study {
  readonly settings: Settings
  /** Place of a value of study.yaml (or of its key) by its path, for example ['people', 0, 'orcid']; of the nearest part that is there. */
  readonly settingPlace: (path: readonly (string | number)[], part?: 'key' | 'value') => Place
  readonly sites: readonly Site[]
  readonly traps: readonly Trap[]
  readonly exposures: readonly Exposure[]
  readonly catch: readonly CatchRecord[]
  readonly taxa: readonly Taxon[]
  readonly weather: readonly WeatherDay[]
  /**
   * Old data: there are no tables of traps and visits, only one effort figure for each site. Each site then stands as
   * one trap with one exposure over the season that study.yaml states, and what cannot be known is left out.
   */
  readonly effortBySite?: true
  readonly tables: Readonly<Partial<Record<TableName, SourceTable>>>
  readonly problems: readonly Problem[]
  /** The author's own Markdown by study-relative path. */
  readonly texts: ReadonlyMap<string, string>
}

/** A study without the rows that were set aside, and what became of every row. */
export interface UsableStudy {
  readonly study: Study
  readonly findings: readonly Finding[]
  readonly balance: readonly RowBalance[]
  readonly judgedOtherwise: readonly JudgedOtherwise[]
  /**
   * Typed rows of the catch table that were set aside, for what the headline numbers would be with them; without those
   * that repeat another row, which were counted there.
   */
  readonly catchSetAside?: readonly CatchRecord[]
  /** How many rows of the catch table were set aside because they repeat another. */
  readonly catchRepeated?: number
}
