import type {CatchInUse, ExposureInUse} from './season-records.ts'

/** What stands as a sampling unit: the site, of which traps are subsamples (Hurlbert 1984), or each trap. */
export type UnitKind = 'site' | 'trap'

/** Effort of one sampling unit, in trap-nights. */
export interface UnitEffort {
  readonly net: number
  /** Net nights times the part of the sample that was sorted. */
  readonly sortedNet: number
  /** Net nights times metres of rim; absent where the rim of a trap is not known. */
  readonly rimMetreNights: number | undefined
}

/** Net effort by sampling unit; units without any are left out. */
export function unitEfforts(
  exposures: readonly ExposureInUse[],
  kind: UnitKind
): ReadonlyMap<number, UnitEffort> {
  const units = new Map<number, UnitEffort>()
  for (const {
    trap,
    effort: {net},
    fractionSorted
  } of exposures) {
    if (net === 0) continue
    const unit = kind === 'trap' ? trap.index : trap.site.index
    const sum = units.get(unit) ?? {net: 0, sortedNet: 0, rimMetreNights: 0}
    units.set(unit, {
      net: sum.net + net,
      sortedNet: sum.sortedNet + net * fractionSorted,
      rimMetreNights:
        trap.rimMetres === undefined || sum.rimMetreNights === undefined
          ? undefined
          : sum.rimMetreNights + net * trap.rimMetres
    })
  }
  return units
}

/** Individuals by the part of the sample that was sorted: whole numbers, so that no sum depends on an order. */
export type CaughtByFraction = Map<number, number>

/** Catch of each sampling unit. */
export type UnitCatches = Map<number, CaughtByFraction>

/** The sampling unit that a catch belongs to. */
export function unitOf({site, trap}: Pick<CatchInUse, 'site' | 'trap'>, kind: UnitKind): number {
  return kind === 'trap' && trap !== undefined ? trap.index : site.index
}

export function addToUnit(catches: UnitCatches, each: CatchInUse, kind: UnitKind): void {
  const {count, fraction} = each
  const unit = unitOf(each, kind)
  let caught = catches.get(unit)
  if (caught === undefined) {
    caught = new Map()
    catches.set(unit, caught)
  }
  caught.set(fraction, (caught.get(fraction) ?? 0) + count)
}

/** Individuals as counted. */
export function sortedCount(caught: CaughtByFraction | undefined): number {
  let sum = 0
  if (caught !== undefined) for (const count of caught.values()) sum += count
  return sum
}

/** Individuals raised to the whole sample: each count divided by the part of the sample that was sorted. */
export function raisedCount(caught: CaughtByFraction | undefined): number {
  if (caught === undefined) return 0
  return [...caught].sort(([a], [b]) => a - b).reduce((sum, [fraction, count]) => sum + count / fraction, 0)
}

/** Sites with net trap-nights among these exposures. */
export function sitesThatCount(exposures: readonly ExposureInUse[]): number {
  return new Set(exposures.filter(({effort}) => effort.net > 0).map(({trap}) => trap.site)).size
}
