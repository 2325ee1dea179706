import type {ChecklistResult} from '../model/results.ts'
import type {Analysis} from './analysis.ts'
import {checklistItems} from './checklist-items.ts'

/** One thing that an item asks for, and whether it is on record. */
export type Asked = readonly [what: string, onRecord: boolean]

export interface ChecklistItem {
  readonly id: string
  readonly item: string
  /** Everything asked for; or the reason why the item does not apply. */
  readonly asked: (analysis: Analysis) => readonly Asked[] | string
}

/**
 * The reporting checklist: each item reported, reported in part, not applicable or not recorded. What study.yaml
 * and the tables do not say is not papered over.
 */
export function checklistResult(analysis: Analysis): ChecklistResult {
  return checklistItems.map(({id, item, asked}) => {
    const things = asked(analysis)
    if (typeof things === 'string') return {id, item, status: 'not applicable', detail: things}
    const given = things.filter(([, onRecord]) => onRecord).map(([what]) => what)
    const missing = things.filter(([, onRecord]) => !onRecord).map(([what]) => what)
    if (missing.length === 0) return {id, item, status: 'reported', detail: given.join(', ')}
    if (given.length === 0) return {id, item, status: 'not recorded', detail: missing.join(', ')}
    return {
      id,
      item,
      status: 'partly',
      detail: `on record: ${given.join(', ')}; not on record: ${missing.join(', ')}`
    }
  })
}
