import {formatNumber} from '../model/format-number.ts'
import {isDefined, type Measure, type MeasureKind} from '../model/quantity.ts'

/** A measure's number as a picture and its description show it, or 'not defined'. */
export function measureWords(measure: Measure): string {
  return isDefined(measure) ? numberWords(measure.value, measure.kind) : 'not defined'
}

/** A measure's number with the caution that must stand beside it. */
export function cautiousWords(measure: Measure): string {
  const words = measureWords(measure)
  return isDefined(measure) && measure.caution !== undefined ? `${words} (${measure.caution})` : words
}

/** The cautions of some measures, each once, after the name of that to which they belong. */
export function cautionNotes(of: string, measures: readonly Measure[]): readonly string[] {
  const cautions = measures.flatMap((measure) =>
    isDefined(measure) && measure.caution !== undefined ? [measure.caution] : []
  )
  return [...new Set(cautions)].map((caution) => `${of}: ${caution}.`)
}

/** A measure's number and the word for what it counts: `1 individual`, `548 individuals`. */
export function amountWords(measure: Measure, one: string, many: string): string {
  return `${cautiousWords(measure)} ${measureWords(measure) === '1' ? one : many}`
}

/** A number rounded by what it is, as everywhere; a share with its sign. */
export function numberWords(value: number, kind: MeasureKind): string {
  const digits = formatNumber(value, kind)
  return kind === 'share' ? `${digits} %` : digits
}

/** The range of a measure, `12.1 to 24.6`, or undefined where it has none. */
export function intervalWords(measure: Measure): string | undefined {
  if (!isDefined(measure) || measure.interval === undefined) return undefined
  const {low, high} = measure.interval
  return `${numberWords(low, measure.kind)} to ${numberWords(high, measure.kind)}`
}

/** `17.3 (95 % interval 12.1 to 24.6)`, `17.3`, or `not defined, because ...`, with the caution if there is one. */
export function measureClause(measure: Measure): string {
  if (!isDefined(measure)) return `not defined, because ${measure.notDefined}`
  const range = intervalWords(measure)
  if (range === undefined || measure.interval === undefined) return cautiousWords(measure)
  const caution = measure.caution === undefined ? '' : `; ${measure.caution}`
  return `${measureWords(measure)} (${confidenceWords(measure.interval.confidence)} interval ${range}${caution})`
}

/** A confidence level as it was set, `95 %` or `97.5 %`. */
export function confidenceWords(confidence: number): string {
  return `${Math.round(confidence * 1000) / 10} %`
}
