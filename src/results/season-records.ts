import type {Moment} from '../model/day.ts'
import type {CatchRecord, Exposure, Study} from '../model/study.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {type Collection, catchOnRecord, collectionsOf} from './collections.ts'
import {type ExposureEffort, exposureEffort, netWithCredit} from './exposure-effort.ts'
import {type NightsBasis, nightsBasis} from './exposure-nights.ts'
import {type RecordedName, type RecordedNames, recordedNames} from './recorded-names.ts'
import {type RoundInUse, type SeasonRounds, seasonRounds} from './season-rounds.ts'
import {type SiteInUse, type StudyArea, studyArea, type TrapInUse} from './study-area.ts'

export interface ExposureInUse {
  readonly record: Exposure
  readonly trap: TrapInUse
  readonly round: RoundInUse
  readonly effort: ExposureEffort
  /** Smallest part of its sample that was sorted, above 0 and up to 1. */
  readonly fractionSorted: number
}

/** Animals of one name, stage and sex from one collection. Flat, because a season may have a million. */
export interface CatchInUse {
  readonly name: RecordedName
  readonly lifeStage: string
  readonly sex: CatchRecord['sex']
  /** Individuals as counted, at least 1. */
  readonly count: number
  /** Part of the sample that was sorted. */
  readonly fraction: number
  readonly site: SiteInUse
  /** Absent in a catch pooled in the field. */
  readonly trap: TrapInUse | undefined
  readonly round: RoundInUse | undefined
  /** Whether an exposure that counts lies behind it; else it stays outside the effort. */
  readonly inRates: boolean
  /** The same if failures of unknown date with animals earned some credit, and if they earned none. */
  readonly inRatesWithCredit: boolean
  readonly inRatesWithoutCredit: boolean
}

/** The study with its tables joined: what every section of the results starts from. */
export interface SeasonRecords {
  readonly study: Study
  readonly area: StudyArea
  readonly rounds: SeasonRounds
  readonly basis: NightsBasis
  readonly exposures: readonly ExposureInUse[]
  readonly catches: readonly CatchInUse[]
  readonly names: RecordedNames
  /** Whether some catches were pooled in the field. */
  readonly pooled: boolean
}

/** @throws Error where an exposure names a trap, or a catch a trap or site, that is not in use. */
export function seasonRecords(study: Study): SeasonRecords {
  const area = studyArea(study)
  const basis = nightsBasis(study.exposures)
  const inOrder = [...study.exposures].sort(exposureOrder)
  const rounds = seasonRounds(inOrder, basis)
  const {collections, unmatched} = collectionsOf(inOrder, study.catch, (id) => area.trapById.get(id)?.site.id)
  const behind = new Map<Exposure, Collection[]>(inOrder.map((exposure) => [exposure, []]))
  for (const each of collections) for (const exposure of each.exposures) behind.get(exposure)!.push(each)
  const joined = new Map<Exposure, ExposureInUse>()
  for (const record of inOrder) {
    const own = behind.get(record)!
    joined.set(record, {
      record,
      trap: known(area.trapById.get(record.trapId), 'trap', record.trapId),
      round: rounds.ofExposure(record),
      effort: exposureEffort(record, catchOnRecord(record, own), study.settings, basis),
      fractionSorted: Math.min(1, ...own.map(({fraction}) => fraction))
    })
  }
  const names = recordedNames(study.taxa, study.catch)
  const catches: CatchInUse[] = []
  const add = (records: readonly CatchRecord[], from: readonly ExposureInUse[]): void => {
    const standing = {
      inRates: from.some(({effort}) => effort.net > 0),
      inRatesWithCredit: from.some(({effort}) => netWithCredit(effort, 1) > 0),
      inRatesWithoutCredit: from.some(({effort}) => netWithCredit(effort, 0) > 0)
    }
    for (const record of records) {
      const {trapId, siteId, count, lifeStage, sex, sampleFraction: fraction} = record
      const trap = trapId === undefined ? undefined : known(area.trapById.get(trapId), 'trap', trapId)
      const site = trap?.site ?? known(area.siteById.get(siteId ?? ''), 'site', siteId)
      if (count === 0) continue
      const name = names.of(record.taxon)
      const round = from[0]?.round ?? roundOf(record, rounds)
      catches.push({name, lifeStage, sex, count, fraction, site, trap, round, ...standing})
    }
  }
  for (const {records, exposures} of collections) {
    const from = exposures.map((exposure) => joined.get(exposure)!)
    add(records, from)
  }
  add(unmatched, [])
  const pooled = study.catch.some(({trapId}) => trapId === undefined)
  return {study, area, rounds, basis, exposures: [...joined.values()], catches, names, pooled}
}

function known<Item>(found: Item | undefined, what: string, id: string | undefined): Item {
  if (found === undefined) throw new Error(`a row in use names ${what} ${id}, which is not in use`)
  return found
}

function roundOf({round, collected}: CatchRecord, rounds: SeasonRounds): RoundInUse | undefined {
  const named = round === undefined ? undefined : rounds.byId.get(round)
  return named ?? (collected === undefined ? undefined : rounds.ofDay(collected.day))
}

/** An order of exposures that does not depend on the order of rows, so that sums come out the same to the last bit. */
function exposureOrder(a: Exposure, b: Exposure): number {
  return (
    codeUnitOrder(a.trapId, b.trapId) ||
    momentOrder(a.collected, b.collected) ||
    momentOrder(a.opened, b.opened)
  )
}

function momentOrder(a: Moment | undefined, b: Moment | undefined): number {
  if (a === undefined || b === undefined) return Number(a === undefined) - Number(b === undefined)
  return a.day - b.day || (a.minutes ?? 0) - (b.minutes ?? 0)
}
