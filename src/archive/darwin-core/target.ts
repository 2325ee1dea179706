import type {Study} from '../../model/study.ts'
import type {RecordedName, RecordedNames} from '../../results/recorded-names.ts'
import {scopesOf} from '../../results/scopes.ts'
import type {PoolEvent, VisitEvent} from './season-events.ts'

/** What a study set out to find, in its own words: never worked out from what it caught. */
export interface Target {
  readonly groups: readonly string[]
  readonly lifeStages: readonly string[]
  /** Whether every animal sought was written down; absent where study.yaml does not say. */
  readonly allRecorded: boolean | undefined
  readonly belongs: (name: RecordedName) => boolean
  /** Rank of a group, where taxa.csv tells. */
  readonly rankOf: (group: string) => {readonly rank?: string}
}

/** The target that study.yaml states; none where it names no group. */
export function targetOf({settings, taxa}: Study, names: RecordedNames): Target | undefined {
  const {groups = [], life_stages: lifeStages = [], all_recorded: allRecorded} = settings.target ?? {}
  if (groups.length === 0) return undefined
  const scopes = scopesOf({target: {groups}}, names.names)
  return {
    groups,
    lifeStages,
    allRecorded,
    belongs: (name) => scopes.some((scope) => scope.holds(name, 'adult')),
    rankOf(group) {
      const rank = (['class', 'order', 'family', 'genus'] as const).find((level) =>
        taxa.some((taxon) => taxon[level]?.toLowerCase() === group.toLowerCase())
      )
      return rank === undefined ? {} : {rank}
    }
  }
}

/** Whether a visit shows what was there as far as its trap goes: it stood ready, and its whole sample was sorted. */
export function isSoundVisit(visit: VisitEvent): boolean {
  return !visit.isPooled && stoodReady(visit)
}

/** The same for traps tipped together. */
export function isSoundPool({visits, records}: PoolEvent): boolean {
  return records.every(({sampleFraction}) => sampleFraction === 1) && visits.every(stoodReady)
}

/** A failed trap shows no absence, and neither does one of which only a part was sorted. */
function stoodReady({exposure, effort, fraction, ofWholeSite}: VisitEvent): boolean {
  const {condition, failedOn} = exposure
  if (ofWholeSite) return false
  const isSound = (condition === 'intact' || condition === 'diluted') && failedOn === undefined
  return isSound && effort.net > 0 && fraction === 1
}

/** An empty trap that stood ready, where every animal sought was written down: all of which absence is recorded. */
export function isReportedEmpty(visit: VisitEvent, {allRecorded}: Target): boolean {
  return visit.animals === 0 && allRecorded === true && isSoundVisit(visit)
}
