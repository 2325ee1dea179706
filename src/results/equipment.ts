import type {Measure} from '../model/quantity.ts'
import type {Settings} from '../model/settings.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, words} from './counted.ts'
import type {SeasonRecords} from './season-records.ts'
import type {TrapInUse} from './study-area.ts'

/** A trap type or fluid in use, and what study.yaml says of it. */
export interface Equipment {
  readonly id: string
  readonly traps: Measure
  readonly stated: Record<string, unknown>
}

/** Trap types by their ids. */
export function trapTypesInUse({study, area}: SeasonRecords): Equipment[] {
  const users = new Map<string, Set<TrapInUse>>()
  for (const trap of area.traps) addUser(users, trap.trapType, trap)
  return described(users, study.settings.trap_types)
}

/** Fluids by their ids, those of single exposures among them. */
export function fluidsInUse({study, area, exposures}: SeasonRecords): Equipment[] {
  const users = new Map<string, Set<TrapInUse>>()
  for (const trap of area.traps) addUser(users, trap.fluid, trap)
  for (const {record, trap} of exposures) addUser(users, record.fluid, trap)
  return described(users, study.settings.fluids)
}

function addUser(users: Map<string, Set<TrapInUse>>, id: string | undefined, trap: TrapInUse): void {
  if (id === undefined) return
  const traps = users.get(id)
  if (traps === undefined) users.set(id, new Set([trap]))
  else traps.add(trap)
}

function described(
  users: ReadonlyMap<string, ReadonlySet<TrapInUse>>,
  declared: Settings['trap_types'] | Settings['fluids']
): Equipment[] {
  return [...users]
    .sort(([a], [b]) => codeUnitOrder(a, b))
    .map(([id, traps]) => {
      return {id, traps: counted(`Traps with ${id}`, traps.size, words.traps), stated: {...declared?.[id]}}
    })
}
