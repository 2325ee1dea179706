import type {Measure} from '../../model/quantity.ts'

/** The standard error as a measure of the same kind, so that it is rounded as its estimate is. */
export function standardError(measure: Measure): Measure | undefined {
  if (!('value' in measure) || measure.standardError === undefined) return undefined
  return {label: `standard error of ${measure.label}`, kind: measure.kind, value: measure.standardError}
}
