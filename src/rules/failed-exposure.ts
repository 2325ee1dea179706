import type {Settings} from '../model/settings.ts'
import type {Exposure} from '../model/study.ts'

/** Usual words for a trap that did not sample all its nights; `diluted` sampled, `closed` was not meant to. */
const failedConditions = new Set([
  'overflowed',
  'dry',
  'raised',
  'disturbed',
  'blocked',
  'spilled',
  'missing'
])

/** Whether an exposure failed in part or whole, or its sample was lost. A study's own word fails where its credit is below full. */
export function failedExposure({condition, sample}: Exposure, {conditions}: Settings): boolean {
  if (sample === 'lost' || failedConditions.has(condition)) return true
  const credit = conditions?.[condition]?.credit
  return credit !== undefined && credit !== 'full' && credit !== 1
}
