import type {TableName} from '../model/column.ts'
import {daysBetween, isoDay} from '../model/day.ts'
import type {Settings} from '../model/settings.ts'
import type {CatchRecord, Exposure, Site, Study, Trap} from '../model/study.ts'

export type StatedTrapType = NonNullable<Settings['trap_types']>[string]
export type StatedFluid = NonNullable<Settings['fluids']>[string]

/** A trap with its site, and with the only type or fluid declared where it names none. */
export interface TrapAtWork {
  readonly trap: Trap
  readonly site: Site
  readonly trapType: string | undefined
  readonly fluid: string | undefined
}

export interface Visit {
  readonly exposure: Exposure
  readonly at: TrapAtWork
  readonly fluid: string | undefined
  /** Nights between opening and collection, above 0. */
  readonly nights: number
  /** The round as named, else the day of collection. */
  readonly round: string
}

/** The first row of a name in the catch, and how many rows have it. */
export interface CaughtName {
  readonly row: number
  readonly rows: number
}

/** What was done in the field and at the bench, without the rows that were set aside. */
export interface Fieldwork {
  readonly sites: readonly Site[]
  readonly traps: readonly TrapAtWork[]
  readonly trapsOfSite: ReadonlyMap<string, readonly TrapAtWork[]>
  /** Habitats with a site, in the order of study.yaml. */
  readonly habitats: readonly string[]
  /** Exposures of known length that were not closed on purpose. */
  readonly visits: readonly Visit[]
  /** Trap types and fluids that a trap or visit uses and study.yaml describes. */
  readonly trapTypes: ReadonlyMap<string, StatedTrapType>
  readonly fluids: ReadonlyMap<string, StatedFluid>
  readonly catch: readonly CatchRecord[]
  readonly caughtNames: ReadonlyMap<string, CaughtName>
}

export function fieldworkOf(
  study: Study,
  aside: ReadonlyMap<TableName, ReadonlyMap<number, string>>
): Fieldwork {
  const {settings} = study
  const sites = inUse('sites', study.sites, aside)
  const siteById = new Map(sites.map((site) => [site.siteId, site]))
  // In old data a trap and its visit only stand for what is known of a whole site: rules on traps do not apply.
  const known = study.effortBySite ? [] : inUse('traps', study.traps, aside)
  const traps = known.flatMap((trap): TrapAtWork[] => {
    const site = siteById.get(trap.siteId)
    if (site === undefined) return []
    const trapType = trap.trapType ?? onlyKey(settings.trap_types)
    return [{trap, site, trapType, fluid: trap.fluid ?? onlyKey(settings.fluids)}]
  })
  const trapById = new Map(traps.map((at) => [at.trap.trapId, at]))
  const visits = inUse('visits', study.exposures, aside).flatMap((exposure) => visitOf(exposure, trapById))
  const records = inUse('catch', study.catch, aside)
  const usedFluids = [...traps.map(({fluid}) => fluid), ...visits.map(({fluid}) => fluid)]
  return {
    sites,
    traps,
    trapsOfSite: grouped(traps, ({site}) => site.siteId),
    habitats: habitatsOf(sites, settings),
    visits,
    trapTypes: described(
      traps.map(({trapType}) => trapType),
      settings.trap_types
    ),
    fluids: described(usedFluids, settings.fluids),
    catch: records,
    caughtNames: caughtNames(records)
  }
}

function inUse<Row extends {readonly row: number}>(
  table: TableName,
  rows: readonly Row[],
  aside: ReadonlyMap<TableName, ReadonlyMap<number, string>>
): readonly Row[] {
  const gone = aside.get(table)
  return gone === undefined ? rows : rows.filter(({row}) => !gone.has(row))
}

function visitOf(exposure: Exposure, trapById: ReadonlyMap<string, TrapAtWork>): readonly Visit[] {
  const at = trapById.get(exposure.trapId)
  const nights = nightsOf(exposure)
  if (at === undefined || nights === undefined || nights <= 0 || exposure.condition === 'closed') return []
  const round = exposure.round ?? isoDay(exposure.collected.day)
  return [{exposure, at, nights, round, fluid: exposure.fluid ?? at.fluid}]
}

/** By the clock where both ends have a time of day, else by dates. */
function nightsOf({opened, collected}: Exposure): number | undefined {
  if (opened === undefined) return undefined
  const timed = opened.minutes !== undefined && collected.minutes !== undefined
  return timed ? daysBetween(opened, collected) : collected.day - opened.day
}

function habitatsOf(sites: readonly Site[], {habitats}: Settings): readonly string[] {
  const found = new Set(sites.map(({habitat}) => habitat))
  const declared = Object.keys(habitats ?? {}).filter((id) => found.has(id))
  return [...new Set([...declared, ...found])]
}

function described<Stated>(
  used: readonly (string | undefined)[],
  declared: Readonly<Record<string, Stated>> | undefined
): ReadonlyMap<string, Stated> {
  const ids = new Set(used)
  return new Map(Object.entries(declared ?? {}).filter(([id]) => ids.has(id)))
}

function caughtNames(records: readonly CatchRecord[]): ReadonlyMap<string, CaughtName> {
  const names = new Map<string, {row: number; rows: number}>()
  for (const {taxon, row} of records) {
    const seen = names.get(taxon)
    if (seen) seen.rows += 1
    else names.set(taxon, {row, rows: 1})
  }
  return names
}

function onlyKey(declared: Readonly<Record<string, unknown>> | undefined): string | undefined {
  const keys = Object.keys(declared ?? {})
  return keys.length === 1 ? keys[0] : undefined
}

/** Rows by a key, in the order in which keys first occur. */
export function grouped<Row, Key>(
  rows: readonly Row[],
  keyOf: (row: Row) => Key
): ReadonlyMap<Key, readonly Row[]> {
  const groups = new Map<Key, Row[]>()
  for (const row of rows) {
    const key = keyOf(row)
    const group = groups.get(key)
    if (group) group.push(row)
    else groups.set(key, [row])
  }
  return groups
}
