import type {Settings} from '../model/settings.ts'
import type {Site, Study, Trap} from '../model/study.ts'
import {codeUnitOrder} from './code-unit-order.ts'

/** A habitat in which at least one site lies. */
export interface HabitatInUse {
  readonly id: string
  /** Name for readers. */
  readonly label: string
  /** Place in the palette: the same in every chart and table. */
  readonly style: number
}

export interface SiteInUse {
  readonly index: number
  readonly id: string
  readonly name: string
  readonly habitat: HabitatInUse
  readonly record: Site
}

export interface TrapInUse {
  readonly index: number
  readonly id: string
  readonly site: SiteInUse
  /** Its own, or the only one that study.yaml declares. */
  readonly trapType: string | undefined
  readonly fluid: string | undefined
  /** Length of the rim in metres; absent where the mouth is not round or its diameter is not stated. */
  readonly rimMetres: number | undefined
  readonly record: Trap
}

/** Where trapping took place: habitats in the order of study.yaml, sites and traps by their ids. */
export interface StudyArea {
  readonly habitats: readonly HabitatInUse[]
  readonly sites: readonly SiteInUse[]
  readonly traps: readonly TrapInUse[]
  readonly siteById: ReadonlyMap<string, SiteInUse>
  readonly trapById: ReadonlyMap<string, TrapInUse>
}

/** @throws Error where a trap names a site that is not in use: the rules should have set it aside. */
export function studyArea(study: Study): StudyArea {
  const habitats = habitatsInUse(study)
  const habitatById = new Map(habitats.map((habitat) => [habitat.id, habitat]))
  const sites = [...study.sites]
    .sort((a, b) => codeUnitOrder(a.siteId, b.siteId))
    .map((record, index): SiteInUse => {
      const habitat = habitatById.get(record.habitat)!
      return {index, id: record.siteId, name: record.siteName ?? record.siteId, habitat, record}
    })
  const siteById = new Map(sites.map((site) => [site.id, site]))
  const traps = [...study.traps]
    .sort((a, b) => codeUnitOrder(a.trapId, b.trapId))
    .map((record, index): TrapInUse => {
      const site = siteById.get(record.siteId)
      if (site === undefined)
        throw new Error(`trap ${record.trapId} is in use, its site ${record.siteId} is not`)
      const trapType = record.trapType ?? onlyKey(study.settings.trap_types)
      const fluid = record.fluid ?? onlyKey(study.settings.fluids)
      return {
        index,
        id: record.trapId,
        site,
        trapType,
        fluid,
        record,
        rimMetres: rimMetres(study.settings, trapType)
      }
    })
  return {habitats, sites, traps, siteById, trapById: new Map(traps.map((trap) => [trap.id, trap]))}
}

function habitatsInUse({settings, sites}: Study): readonly HabitatInUse[] {
  const found = new Set(sites.map(({habitat}) => habitat))
  const declared = Object.keys(settings.habitats ?? {}).filter((id) => found.has(id))
  const others = [...found].filter((id) => !declared.includes(id)).sort(codeUnitOrder)
  return [...declared, ...others].map((id, style) => {
    const said = settings.habitats?.[id]
    const label = typeof said === 'string' ? said : said?.label
    return {id, label: label ?? id, style}
  })
}

function onlyKey(declared: Readonly<Record<string, unknown>> | undefined): string | undefined {
  const keys = Object.keys(declared ?? {})
  return keys.length === 1 ? keys[0] : undefined
}

function rimMetres(settings: Settings, trapType: string | undefined): number | undefined {
  const stated = trapType === undefined ? undefined : settings.trap_types?.[trapType]
  if (stated?.rim_diameter_mm === undefined) return undefined
  const round = stated.shape === undefined || /round|circ/i.test(stated.shape)
  return round ? (Math.PI * stated.rim_diameter_mm) / 1000 : undefined
}
