/** The range that goes with an estimate, and how it was made. */
export interface Interval {
  readonly low: number
  readonly high: number
  /** Confidence level, 0 to 1. */
  readonly confidence: number
  /** What kind of interval, in the words that a report prints. */
  readonly method: string
}

/** A number that may be printed, or the reason why there is none. Never NaN, and never zero for unknown. */
export type Quantity = Defined | NotDefined

export interface Defined {
  readonly value: number
  readonly standardError?: number
  readonly interval?: Interval
  /** A caution that must stand beside the number wherever it is shown. */
  readonly caution?: string
}

export interface NotDefined {
  /** Completes the sentence 'not defined, because ...'; lower case, no full stop. */
  readonly notDefined: string
}

export function isDefined(quantity: Quantity): quantity is Defined {
  return 'value' in quantity
}

/** What a number is, which alone decides how it is rounded and which unit words go with it. */
export type MeasureKind =
  | 'count' // whole things: individuals, traps, rows
  | 'nights' // trap-nights: whole, or one decimal where credit or clock times make them so
  | 'rate' // per 100 trap-nights: three significant figures
  | 'diversity' // effective numbers of species and indices: three significant figures
  | 'estimate' // estimated numbers of species: three significant figures
  | 'share' // 0 to 1, printed as per cent
  | 'coverage' // 0 to 1, printed with three decimals
  | 'probability' // p-values
  | 'ratio' // three significant figures
  | 'metres'
  | 'kilometres'
  | 'number' // a stated figure, printed as written

/** A quantity with all that is needed to print it, so that no two documents round or name it differently. */
export type Measure = Quantity & {
  readonly label: string
  readonly kind: MeasureKind
  /** Singular and plural of what is counted, for example ['trap-night', 'trap-nights']; absent for pure numbers. */
  readonly unit?: readonly [one: string, many: string]
}
