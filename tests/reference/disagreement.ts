import {isDefined, type Quantity} from '../../src/model/quantity.ts'
import type {Figure} from './reference-file.ts'

/** How far apart two figures may be: relative to the expected one, and absolutely where that is near 0. */
export interface Tolerance {
  readonly relative: number
  readonly absolute: number
}

export const closedForm: Tolerance = {relative: 1e-9, absolute: 1e-13}
export const fittedModel: Tolerance = {relative: 1e-6, absolute: 1e-9}
export const solvedSize: Tolerance = {relative: 1e-8, absolute: 1e-12}

/** What a test prints where a figure of ours is not that of the second implementation; nothing where it is. */
export function disagreement(
  what: string,
  ours: Quantity | number | undefined,
  theirs: Figure | undefined,
  {relative, absolute}: Tolerance = closedForm
): readonly string[] {
  const value = typeof ours === 'object' ? (isDefined(ours) ? ours.value : undefined) : ours
  if (value === undefined || theirs === null || theirs === undefined) {
    const agree = value === undefined && (theirs === null || theirs === undefined)
    return agree ? [] : [`${what}: ${value ?? 'not defined'} here, ${theirs ?? 'not defined'} there`]
  }
  // Written so that NaN is a disagreement.
  const close = Math.abs(value - theirs) <= relative * Math.abs(theirs) + absolute
  return close ? [] : [`${what}: ${value} here, ${theirs} there`]
}

/** The same for lists, whose lengths must agree too. */
export function disagreements(
  what: string,
  ours: readonly (Quantity | number | undefined)[],
  theirs: readonly (Figure | undefined)[],
  tolerance: Tolerance = closedForm
): readonly string[] {
  if (ours.length !== theirs.length) return [`${what}: ${ours.length} here, ${theirs.length} there`]
  return ours.flatMap((own, index) => disagreement(`${what} ${index}`, own, theirs[index], tolerance))
}
