import type {MeasureKind} from './quantity.ts'
import {fixed, significant} from './significant.ts'

/**
 * The digits of a number, rounded as its kind asks, without unit: the one rule for documents, tables and charts.
 * Never an exponent, never a locale; a per cent without its sign.
 *
 * @throws RangeError when the value is not finite: such a number must never have become a measure.
 */
export function formatNumber(value: number, kind: MeasureKind): string {
  switch (kind) {
    case 'count':
      return fixed(value, 0)
    case 'nights':
      return withoutNought(fixed(value, 1))
    case 'metres':
      return withoutNought(fixed(value, Math.abs(value) < 10 ? 1 : 0))
    case 'kilometres':
      return fixed(value, Math.abs(value) < 1 ? 2 : Math.abs(value) < 100 ? 1 : 0)
    case 'rate':
    case 'diversity':
    case 'estimate':
    case 'ratio':
      return significant(value, 3)
    case 'coverage':
      return fixed(value, 3)
    case 'probability':
      return value < 0.001 ? '<0.001' : fixed(value, 3)
    case 'share':
      return percentage(value * 100)
    case 'number':
      return formatPlain(value)
  }
}

/** A number that is no measure: whole numbers as they are (a year has no comma), others to at most four significant figures. */
export function formatPlain(value: number): string {
  const text = (Number.isInteger(value) ? fixed(value, 0) : significant(value, 4)).replaceAll(',', '')
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

/** Whole per cents from ten on, one decimal below; what is not quite nothing or all is never printed as if it were. */
function percentage(percent: number): string {
  const size = Math.abs(percent)
  if (size > 0 && size < 0.05) return percent > 0 ? '<0.1' : '0'
  if (percent > 99.9 && percent < 100) return '>99.9'
  if (percent >= 99.5 && percent < 100) return fixed(percent, 1)
  return fixed(percent, size === 0 || size >= 9.95 ? 0 : 1)
}

function withoutNought(text: string): string {
  return text.endsWith('.0') ? text.slice(0, -2) : text
}
