import {seedOf} from '../model/seed-of.ts'
import type {Study} from '../model/study.ts'
import {type PlannedNights, plannedNights} from './planned-nights.ts'
import type {UnitKind} from './sampling-units.ts'
import {type Scope, scopesOf} from './scopes.ts'
import {type CatchInUse, type SeasonRecords, seasonRecords} from './season-records.ts'
import {summedCatches} from './summed-catches.ts'

/** The joined records with the choices that hold for every number. */
export interface Analysis extends SeasonRecords {
  readonly unit: UnitKind
  /** Who decided that, where it was not the default. */
  readonly unitDecidedBy: string | undefined
  readonly confidence: number
  readonly seed: number
  /** Bootstrap replicates. */
  readonly replicates: number
  /** Most arrangements that a permutation test tries. */
  readonly permutations: number
  /** Whether traps of different types were used, so that rates per metre of rim are worth a look. */
  readonly trapTypesDiffer: boolean
  readonly planned: PlannedNights
  /** The catches summed over rounds, sexes and, where sites are the sampling units, traps. */
  readonly summed: readonly CatchInUse[]
  readonly scopes: readonly Scope[]
}

export function analysisOf(study: Study): Analysis {
  const records = seasonRecords(study)
  const {
    unit,
    unit_reason: reason,
    confidence = 0.95,
    replicates = 1000,
    permutations = 9999
  } = study.settings.analysis ?? {}
  const trapsPooled = unit === 'trap' && records.pooled
  const kind = trapsPooled ? 'site' : (unit ?? 'site')
  return {
    ...records,
    unit: kind,
    summed: summedCatches(records.catches, kind),
    unitDecidedBy: trapsPooled
      ? 'catches were pooled in the field, so that traps cannot stand as sampling units'
      : unit && `the authors chose so in study.yaml${reason === undefined ? '' : `: ${reason}`}`,
    confidence,
    seed: seedOf(study.settings),
    replicates,
    permutations,
    trapTypesDiffer: new Set(records.area.traps.map(({trapType}) => trapType)).size > 1,
    planned: plannedNights(records),
    scopes: scopesOf(study.settings, records.names.names)
  }
}
