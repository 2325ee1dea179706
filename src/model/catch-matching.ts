import type {Moment} from './day.ts'
import type {CatchRecord, Exposure} from './study.ts'

/** Which exposure every catch record came from: one answer for rules, results and archive alike. */
export interface CatchMatching {
  /** Catch records of an exposure, by the exposure's row; pooled catches are not among them. */
  readonly ofExposure: ReadonlyMap<number, readonly CatchRecord[]>
  /** Catches pooled in the field, with the exposures that were tipped together. */
  readonly pooled: readonly {readonly record: CatchRecord; readonly exposures: readonly Exposure[]}[]
  /** Records that no exposure accounts for. */
  readonly unmatched: readonly CatchRecord[]
}

/**
 * Match catch records to exposures by trap and day of collection; by the clock too where a trap was collected
 * twice on one day. A pooled catch belongs to all exposures of its site and round. Linear in rows.
 */
export function matchCatch(
  exposures: readonly Exposure[],
  records: readonly CatchRecord[],
  siteOfTrap: (trapId: string) => string | undefined
): CatchMatching {
  const byTrap = new Map<string, Map<number, Exposure[]>>()
  const bySiteRound = new Map<string, Exposure[]>()
  for (const exposure of exposures) {
    const days = byTrap.get(exposure.trapId) ?? new Map<number, Exposure[]>()
    byTrap.set(exposure.trapId, days)
    append(days, exposure.collected.day, exposure)
    const site = siteOfTrap(exposure.trapId)
    if (site !== undefined && exposure.round !== undefined)
      append(bySiteRound, siteRoundKey(site, exposure.round), exposure)
  }
  const ofExposure = new Map<number, CatchRecord[]>()
  const pooled: {record: CatchRecord; exposures: readonly Exposure[]}[] = []
  const unmatched: CatchRecord[] = []
  for (const record of records) {
    if (record.trapId === undefined) {
      const together = bySiteRound.get(siteRoundKey(record.siteId ?? '', record.round ?? '')) ?? []
      if (together.length > 0) pooled.push({record, exposures: together})
      else unmatched.push(record)
      continue
    }
    const sameDay = record.collected && byTrap.get(record.trapId)?.get(record.collected.day)
    const exposure = sameDay && record.collected && collectedAt(sameDay, record.collected)
    if (exposure) append(ofExposure, exposure.row, record)
    else unmatched.push(record)
  }
  return {ofExposure, pooled, unmatched}
}

function collectedAt(sameDay: readonly Exposure[], moment: Moment): Exposure | undefined {
  if (sameDay.length === 1) return sameDay[0]
  return moment.minutes === undefined
    ? undefined
    : sameDay.find(({collected}) => collected.minutes === moment.minutes)
}

function siteRoundKey(site: string, round: string): string {
  return `${site}\u0000${round}`
}

function append<Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value): void {
  const list = map.get(key)
  if (list) list.push(value)
  else map.set(key, [value])
}
