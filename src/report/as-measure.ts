import {isDefined, type Measure} from '../model/quantity.ts'

/** The value as a measure, if it is one. */
export function asMeasure(value: unknown): Measure | undefined {
  if (typeof value !== 'object' || value === null || !('kind' in value) || !('label' in value))
    return undefined
  return 'value' in value || 'notDefined' in value ? (value as Measure) : undefined
}

/** Whether there is something to tell: not false, not empty, and of a measure a value other than nought. */
export function holds(value: unknown): boolean {
  const measure = asMeasure(value)
  if (measure) return isDefined(measure) && measure.value !== 0
  if (Array.isArray(value)) return value.length > 0
  return value !== undefined && value !== null && value !== false && value !== ''
}

/** The number that a comparison goes by: a measure's value, a list's length, a plain number. */
export function comparable(value: unknown): number | undefined {
  const measure = asMeasure(value)
  if (measure) return isDefined(measure) ? measure.value : undefined
  if (Array.isArray(value)) return value.length
  return typeof value === 'number' ? value : undefined
}
