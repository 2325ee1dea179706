import {formatNumber} from '../model/format-number.ts'
import {type Defined, isDefined, type Measure} from '../model/quantity.ts'

/**
 * The only way from a measure to text: how it is rounded, which words go with it, and what is said when it has
 * no value. Digits come from model/format-number.ts, days from format-date.ts.
 */
export interface MeasureStyle {
  /** Whole numbers below ten in words: 'three traps'. */
  readonly words?: boolean
  /** Begins a sentence: the first letter is a capital. */
  readonly start?: boolean
  /** To the nearest whole number, for readers who are given no decimals. */
  readonly whole?: boolean
}

const smallNumbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']

/** The number without its unit: `1,593`, `12 %`, `p = 0.034`; or why there is none. */
export function formatMeasure(measure: Measure, style: MeasureStyle = {}): string {
  return started(
    isDefined(measure) ? valueText(measure, measure.value, style) : reasonText(measure.notDefined),
    style
  )
}

/** The number with the word for what was counted, in the right number: `1 trap`, `12 traps`, `three traps`. */
export function formatAmount(measure: Measure, style: MeasureStyle = {}): string {
  if (!isDefined(measure) || measure.unit === undefined) return formatMeasure(measure, style)
  const number = valueText(measure, measure.value, style)
  return started(`${number} ${unitWords(measure, measure.unit)}`, style)
}

/** `41.0 to 66.9`, in the unit of the measure; undefined where it has no interval. */
export function formatInterval(measure: Measure): string | undefined {
  if (!isDefined(measure) || measure.interval === undefined) return undefined
  const {low, high} = measure.interval
  const range = `${formatNumber(low, measure.kind)} to ${formatNumber(high, measure.kind)}`
  return measure.kind === 'share' ? `${range} %` : range
}

/** The digits alone, for a table whose column head names the unit. */
export function formatDigits(measure: Measure & Defined): string {
  return formatNumber(measure.value, measure.kind)
}

/** Whether the words that go with a measure stand in the singular: only where exactly '1' is printed. */
export function isSingular(measure: Measure): boolean {
  return isDefined(measure) && formatNumber(measure.value, measure.kind) === '1'
}

function unitWords(measure: Measure, [one, many]: readonly [string, string]): string {
  return isSingular(measure) ? one : many
}

function valueText(measure: Measure, value: number, style: MeasureStyle): string {
  const digits = formatNumber(value, style.whole === true ? 'count' : measure.kind)
  switch (measure.kind) {
    case 'share':
      return `${digits} %`
    case 'probability':
      return digits.startsWith('<') ? `p < ${digits.slice(1)}` : `p = ${digits}`
    default:
      return style.words === true && /^\d$/.test(digits) ? (smallNumbers[Number(digits)] ?? digits) : digits
  }
}

function reasonText(reason: string): string {
  return `not defined (${reason})`
}

function started(text: string, style: MeasureStyle): string {
  return style.start === true ? text.charAt(0).toUpperCase() + text.slice(1) : text
}
