import {type Day, isoDay, isoMoment} from '../../model/day.ts'
import {freeName} from '../../model/free-name.ts'
import type {CatchRecord, Exposure, Study} from '../../model/study.ts'
import {type Collection, catchOnRecord, collectionsOf} from '../../results/collections.ts'
import {type ExposureEffort, exposureEffort} from '../../results/exposure-effort.ts'
import {nightsBasis} from '../../results/exposure-nights.ts'
import {groupBy} from '../../results/group-by.ts'
import {type SiteInUse, studyArea, type TrapInUse} from '../../results/study-area.ts'
import type {StudyPrivacy} from '../privacy/study-privacy.ts'

/** The events of a season, each inside its parent: season, site, trap, and the exposure of a trap. */
export interface SeasonEvents {
  readonly study: Study
  readonly privacy: StudyPrivacy
  readonly id: string
  /** ISO interval of days that holds every event. */
  readonly date: string | undefined
  readonly sites: readonly SiteEvent[]
  /** Records of kinds that are not shown with a place. */
  readonly withheld: readonly CatchRecord[]
}

export interface SiteEvent {
  readonly id: string
  readonly site: SiteInUse
  readonly date: string | undefined
  readonly traps: readonly TrapEvent[]
  readonly pools: readonly PoolEvent[]
  /** Records that name the site, but no exposure accounts for. */
  readonly strays: readonly CatchRecord[]
}

export interface TrapEvent {
  readonly id: string
  readonly site: SiteEvent
  readonly trap: TrapInUse
  readonly date: string | undefined
  readonly visits: readonly VisitEvent[]
  readonly strays: readonly CatchRecord[]
}

export interface VisitEvent {
  readonly id: string
  readonly trap: TrapEvent
  readonly exposure: Exposure
  readonly effort: ExposureEffort
  /** Its own catch as others may see it; a catch that was pooled in the field is with the pool. */
  readonly records: readonly CatchRecord[]
  /** Individuals of its own catch, those of withheld kinds too. */
  readonly animals: number
  /** Smallest part of its sample that was sorted. */
  readonly fraction: number
  readonly isPooled: boolean
  /** Old data: it stands for all traps of a site over the season. */
  readonly ofWholeSite: boolean
}

/** Traps tipped together in the field. */
export interface PoolEvent {
  readonly id: string
  readonly site: SiteEvent
  readonly date: string | undefined
  readonly visits: readonly VisitEvent[]
  readonly records: readonly CatchRecord[]
  readonly animals: number
}

type Writable<Event> = {-readonly [Key in keyof Event]: Event[Key]}

export function seasonEvents(study: Study, privacy: StudyPrivacy, id: string): SeasonEvents {
  const area = studyArea(study)
  const basis = nightsBasis(study.exposures)
  const siteOfTrap = (trapId: string): string | undefined => area.trapById.get(trapId)?.site.id
  const {collections, unmatched} = collectionsOf(study.exposures, study.catch, siteOfTrap)
  const behind = new Map<Exposure, Collection[]>(study.exposures.map((exposure) => [exposure, []]))
  for (const each of collections) for (const exposure of each.exposures) behind.get(exposure)!.push(each)
  const isPool = ({records}: Collection): boolean => records[0]?.trapId === undefined
  const isShown = ({taxon, count}: CatchRecord): boolean => count > 0 && !privacy.isWithheld(taxon)
  const shown = (records: readonly CatchRecord[]): readonly CatchRecord[] =>
    records.every(isShown) ? records : records.filter(isShown)
  const exposuresOf = groupBy(study.exposures, ({trapId}) => trapId)
  const strays = groupBy(unmatched, ({trapId, siteId}) => trapId ?? `site:${siteId}`)
  const visitOf = new Map<Exposure, VisitEvent>()
  const ids = distinctIds()

  const trapEvent = (trap: TrapInUse, site: SiteEvent): TrapEvent => {
    const exposures = [...(exposuresOf.get(trap.id) ?? [])].sort(byCollection)
    const unplaced = strays.get(trap.id) ?? []
    const event: Writable<TrapEvent> = {
      id: ids(`${id}:trap:${trap.id}`),
      site,
      trap,
      date: dateOf(exposures, unplaced),
      visits: [],
      strays: shown(unplaced)
    }
    event.visits = exposures.map((exposure) => {
      const own = behind.get(exposure)!.filter((each) => !isPool(each))
      const visit: VisitEvent = {
        id: ids(
          study.effortBySite
            ? `${id}:catch:${trap.site.id}`
            : `${id}:visit:${trap.id}:${isoMoment(exposure.collected)}`
        ),
        trap: event,
        exposure,
        effort: exposureEffort(
          exposure,
          catchOnRecord(exposure, behind.get(exposure)!),
          study.settings,
          basis
        ),
        records: own.flatMap(({records}) => shown(records)),
        animals: own.reduce((sum, {animals}) => sum + animals, 0),
        fraction: Math.min(1, ...behind.get(exposure)!.map(({fraction}) => fraction)),
        isPooled: behind.get(exposure)!.some(isPool),
        ofWholeSite: study.effortBySite === true
      }
      visitOf.set(exposure, visit)
      return visit
    })
    return event
  }
  const poolsOf = groupBy(collections.filter(isPool), ({exposures}) => siteOfTrap(exposures[0]!.trapId))
  // A trap that was never set, and a site without one, is no event: raw/ has them.
  const isUsed = (trap: TrapInUse): boolean => exposuresOf.has(trap.id) || strays.has(trap.id)
  const usedSites = area.sites.filter(
    (site) => strays.has(`site:${site.id}`) || area.traps.some((trap) => trap.site === site && isUsed(trap))
  )
  const sites = usedSites.map((site): SiteEvent => {
    const traps = area.traps.filter((trap) => trap.site === site && isUsed(trap))
    const exposures = traps.flatMap((trap) => exposuresOf.get(trap.id) ?? [])
    const unplaced = strays.get(`site:${site.id}`) ?? []
    const ofTraps = traps.flatMap((trap) => strays.get(trap.id) ?? [])
    const event: Writable<SiteEvent> = {
      id: ids(`${id}:site:${site.id}`),
      site,
      date: dateOf(exposures, [...unplaced, ...ofTraps]),
      traps: [],
      pools: [],
      strays: shown(unplaced)
    }
    event.traps = traps.map((trap) => trapEvent(trap, event))
    event.pools = (poolsOf.get(site.id) ?? []).map(({exposures: pooled, records, animals}) => ({
      id: ids(`${id}:pool:${site.id}:${pooled[0]?.round ?? ''}`),
      site: event,
      date: dateOf(pooled, []),
      visits: pooled.map((exposure) => visitOf.get(exposure)!),
      records: shown(records),
      animals
    }))
    return event
  })
  const withheld =
    privacy.withheldNames.size === 0
      ? []
      : study.catch.filter(({taxon, count}) => count > 0 && privacy.isWithheld(taxon))
  return {study, privacy, id, date: dateOf(study.exposures, unmatched), sites, withheld}
}

/** Every id once: where two would be the same, later ones get a number. */
function distinctIds(): (wanted: string) => string {
  const taken = new Set<string>()
  return (wanted) => {
    const id = freeName(
      wanted,
      (one) => taken.has(one),
      (number) => `${wanted}:${number}`
    )
    taken.add(id)
    return id
  }
}

function byCollection(a: Exposure, b: Exposure): number {
  return (
    a.collected.day - b.collected.day ||
    (a.collected.minutes ?? 0) - (b.collected.minutes ?? 0) ||
    a.row - b.row
  )
}

/** `2026-05-04/2026-05-18`, the days from the first opening to the last collection, both in full. */
function dateOf(exposures: readonly Exposure[], strays: readonly CatchRecord[]): string | undefined {
  let first: Day | undefined
  let last: Day | undefined
  const add = (from: Day, to: Day): void => {
    first = Math.min(first ?? from, from)
    last = Math.max(last ?? to, to)
  }
  for (const {opened, collected} of exposures) add((opened ?? collected).day, collected.day)
  for (const {collected} of strays) if (collected !== undefined) add(collected.day, collected.day)
  if (first === undefined || last === undefined) return undefined
  return first === last ? isoDay(first) : `${isoDay(first)}/${isoDay(last)}`
}
