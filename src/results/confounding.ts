import {isDefined} from '../model/quantity.ts'
import type {DesignResult} from '../model/results.ts'
import {median} from '../statistics/median.ts'
import {groupBy} from './group-by.ts'
import type {ExposureInUse, SeasonRecords} from './season-records.ts'
import type {RoundInUse} from './season-rounds.ts'
import type {HabitatInUse} from './study-area.ts'

/** Habitats that share less than this part of their exposures differ in line with habitat. Common practice, no source. */
const leastOverlap = 0.5

/** Intervals whose medians differ by more than this factor. Longer ones catch more a night: Holland & Reynolds 2005. */
const largestIntervalRatio = 1.5

/**
 * What differs in line with habitat, so that a difference in catch cannot be told from it: trap type, cover, fluid,
 * and the interval between opening and collection in the rounds that all habitats share.
 */
export function confoundedWithHabitat(
  {study, area, exposures}: SeasonRecords,
  sharedRounds: ReadonlySet<RoundInUse>,
  among: readonly HabitatInUse[] = area.habitats
): DesignResult['confounded'] {
  const counting = exposures.filter(({effort}) => effort.net > 0)
  const byHabitat = groupBy(counting, ({trap}) => trap.site.habitat)
  const habitats = among.flatMap((habitat) => {
    const own = byHabitat.get(habitat)
    return own === undefined ? [] : [{label: habitat.label, exposures: own}]
  })
  const cover = ({trap: {trapType}}: ExposureInUse): string | undefined => {
    const stated = trapType === undefined ? undefined : study.settings.trap_types?.[trapType]
    if (typeof stated?.cover !== 'boolean') return stated?.cover
    return stated.cover ? 'covered' : 'not covered'
  }
  const differing: DesignResult['confounded'] = []
  const compare = (what: string, trait: (exposure: ExposureInUse) => string | undefined) => {
    const shares = habitats.map(({label, exposures: own}) => ({label, shares: sharesOf(own, trait)}))
    const known = shares.filter(({shares: {size}}) => size > 0)
    const apart = known.some((a, index) =>
      known.slice(index + 1).some((b) => overlap(a.shares, b.shares) < leastOverlap)
    )
    if (!apart) return
    differing.push({
      what,
      detail: known.map(({label, shares: own}) => `${label}: ${[...own.keys()].join(' and ')}`).join('; ')
    })
  }
  compare('trap type', ({trap}) => trap.trapType)
  compare('cover', cover)
  compare('fluid', ({record, trap}) => record.fluid ?? trap.fluid)
  const intervals = habitats.flatMap(({label, exposures: own}) => {
    const shared = own.filter(({round}) => sharedRounds.has(round))
    const middle = median((sharedRounds.size > 0 ? shared : own).map(({effort}) => effort.exposed ?? 0))
    return isDefined(middle) ? [{label, nights: middle.value}] : []
  })
  const nights = intervals.map((interval) => interval.nights)
  if (Math.max(...nights) > largestIntervalRatio * Math.min(...nights)) {
    const detail = intervals
      .map(({label, nights: middle}) => `${label}: ${Number(middle.toFixed(1))} nights`)
      .join('; ')
    differing.push({what: 'interval', detail})
  }
  return differing
}

/** Share of exposures with each value, the commonest first; those of which nothing is known are left out. */
function sharesOf(
  exposures: readonly ExposureInUse[],
  trait: (exposure: ExposureInUse) => string | undefined
): ReadonlyMap<string, number> {
  const groups = [...groupBy(exposures, trait)]
  const known = groups.reduce((sum, [, group]) => sum + group.length, 0)
  return new Map(
    groups
      .map(([value, group]): [string, number] => [value, group.length / known])
      .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
  )
}

function overlap(first: ReadonlyMap<string, number>, second: ReadonlyMap<string, number>): number {
  return [...first].reduce((sum, [value, share]) => sum + Math.min(share, second.get(value) ?? 0), 0)
}
