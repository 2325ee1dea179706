import type {Interval} from '../model/quantity.ts'

/** The methods behind the intervals of one picture. */
export interface IntervalMethods {
  /** What the strong lines are: the method of most intervals, or of the first where two are as frequent. */
  readonly main: string
  /** What the thin lines are. */
  readonly others: readonly string[]
}

/** The methods in use, or undefined where there is no interval. */
export function intervalMethods(intervals: readonly Interval[]): IntervalMethods | undefined {
  const methods = [...new Set(intervals.map(({method}) => method))]
  const times = (method: string) => intervals.filter((interval) => interval.method === method).length
  const [main, ...others] = methods.toSorted((one, other) => times(other) - times(one))
  return main === undefined ? undefined : {main, others}
}

/** A note that says what the lines of the intervals are. */
export function methodNotes(methods: IntervalMethods | undefined): readonly string[] {
  if (methods === undefined) return []
  const {main, others} = methods
  return [`Intervals: ${main}.`, ...(others.length === 0 ? [] : [`Thin lines: ${others.join('; ')}.`])]
}
