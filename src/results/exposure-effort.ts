import type {ConditionWord} from '../model/column-words.ts'
import type {Settings} from '../model/settings.ts'
import type {Exposure} from '../model/study.ts'
import {type NightsBasis, nightsBetween} from './exposure-nights.ts'

/** Share of the interval that counts, by the state in which a trap was found. */
const usualCredits: Readonly<Record<ConditionWord, number>> = {
  intact: 1,
  diluted: 1,
  overflowed: 0.5,
  dry: 0.5,
  raised: 0.5,
  disturbed: 0.5,
  blocked: 0.5,
  spilled: 0,
  missing: 0,
  closed: 0
}

/** What the catch records say of one exposure. */
export interface CatchOnRecord {
  /** Whether any row, be it of 0 animals, records its catch. */
  readonly rows: boolean
  /** Whether animals were recovered. */
  readonly animals: boolean
  /** Whether its sample is called empty while animals are recorded from it. */
  readonly contradicted: boolean
}

export interface ExposureEffort {
  /** Nights between opening and collection; absent without an opening date, 0 while closed on purpose. */
  readonly exposed: number | undefined
  /** Nights that count. */
  readonly net: number
  /** Nights that would count if the sample were sorted. */
  readonly unsorted: number
  readonly closed: boolean
  /** A failure of unknown date with animals recovered: another credit would change its effort. */
  readonly hangsOnCredit: boolean
}

const none = {net: 0, unsorted: 0, closed: false, hangsOnCredit: false} as const

/**
 * Effort of one exposure in trap-nights: nights times the credit of its condition. A failure whose day is known
 * counts until then. A failure of unknown date counts in part where animals were recovered, and not at all where
 * the sample was empty: it cannot show absence. No effort without a catch record; an explicit empty one counts.
 *
 * Source: half the interval for a failure of unknown date, Nelson & Clark 1973, J. Mammal. 54:295-298 (from
 * memory), made for single-catch traps; a convention here.
 */
export function exposureEffort(
  exposure: Exposure,
  record: CatchOnRecord,
  settings: Settings,
  basis: NightsBasis
): ExposureEffort {
  if (exposure.condition === 'closed') return {...none, exposed: 0, closed: true}
  if (exposure.opened === undefined) return {...none, exposed: undefined}
  const exposed = exposure.statedNights ?? nightsBetween(exposure.opened, exposure.collected, basis)
  const sample = exposure.sample ?? (record.rows ? 'sorted' : settings.no_catch_rows)
  if (sample === undefined || sample === 'lost' || record.contradicted) return {...none, exposed}
  const credit = creditOf(exposure.condition, settings)
  const undated = exposure.failedOn === undefined && isFailure(exposure.condition, credit)
  const earned =
    credit > 0 && exposure.failedOn !== undefined
      ? Math.min(exposed, nightsBetween(exposure.opened, exposure.failedOn, basis))
      : exposed * credit
  if (sample === 'unsorted') return {...none, exposed, unsorted: earned}
  if (undated && credit < 1 && !record.animals) return {...none, exposed}
  return {...none, exposed, net: earned, hangsOnCredit: undated && record.animals}
}

/** Nights that an exposure lasted and did not earn; those whose sample is not sorted yet may still be. */
export function nightsLost({exposed = 0, net, unsorted}: ExposureEffort): number {
  return exposed - net - unsorted
}

/** Net nights of an exposure if failures of unknown date with animals earned this credit, 0 to 1. */
export function netWithCredit({net, exposed, hangsOnCredit}: ExposureEffort, credit: number): number {
  return hangsOnCredit ? (exposed ?? 0) * credit : net
}

/** Credit of a condition word, 0 to 1: study.yaml's where it sets one. A word that nobody declared earns nothing. */
export function creditOf(condition: string, settings: Settings): number {
  const own = settings.conditions?.[condition]?.credit
  if (typeof own === 'number') return own
  if (own !== undefined) return {full: 1, half: 0.5, none: 0}[own]
  return Object.hasOwn(usualCredits, condition) ? usualCredits[condition as ConditionWord] : 0
}

/** Whether a trap in this state failed at some time of the interval, whatever credit a study gives it. */
export function isFailure(condition: string, credit: number): boolean {
  const usual = Object.hasOwn(usualCredits, condition) ? usualCredits[condition as ConditionWord] : credit
  return (usual > 0 && usual < 1) || (credit > 0 && credit < 1)
}
