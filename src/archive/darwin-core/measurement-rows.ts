import type {Site} from '../../model/study.ts'
import type {SeasonEvents, SiteEvent, TrapEvent, VisitEvent} from './season-events.ts'
import type {TermTable} from './term-table.ts'

/** One measurement or fact about an event. */
export interface MeasurementRow {
  readonly event: string
  /** Short name of what was measured, for the id. */
  readonly key: string
  readonly type: string
  readonly value: string | number
  readonly unit?: string
}

/** What was measured and noted beside the catch: habitat structure, traps and fluids, the state of a trap. */
export function measurementTable(events: SeasonEvents): TermTable<MeasurementRow> {
  return {
    file: 'measurement.csv',
    rowType: 'dwc:MeasurementOrFact',
    title: 'Measurements and facts about sites, traps and exposures',
    columns: [
      {term: 'dwc:eventID', value: ({event}) => event},
      {term: 'dwc:measurementID', value: ({event, key}) => `${event}:${key}`},
      {term: 'dwc:measurementType', value: ({type}) => type},
      {term: 'dwc:measurementValue', value: ({value}) => value},
      {term: 'dwc:measurementUnit', value: ({unit}) => unit}
    ],
    constants: [],
    rows: () => measurementRows(events)
  }
}

function* measurementRows(events: SeasonEvents): Iterable<MeasurementRow> {
  for (const site of events.sites) {
    yield* siteFacts(site)
    for (const trap of events.study.effortBySite ? [] : site.traps) {
      yield* trapFacts(trap, events)
      for (const visit of trap.visits) yield* visitFacts(visit, events)
    }
  }
}

type Fact = readonly [key: string, type: string, value: string | number | undefined, unit?: string]

function* facts(event: string, list: readonly Fact[]): Iterable<MeasurementRow> {
  for (const [key, type, value, unit] of list) {
    if (value === undefined || value === '') continue
    yield {event, key, type, value, ...(unit !== undefined && {unit})}
  }
}

function siteFacts({id, site: {record}}: SiteEvent): Iterable<MeasurementRow> {
  return facts(id, structureOf(record))
}

function structureOf(site: Site): readonly Fact[] {
  return [
    ['vegetation-height', 'height of the vegetation', site.vegetationHeightCm, 'cm'],
    ['litter-depth', 'depth of the litter', site.litterDepthMm, 'mm'],
    ['bare-ground', 'bare ground', site.bareGroundPercent, '%'],
    ['canopy', 'canopy cover', site.canopyPercent, '%'],
    ['edge-distance', 'distance to the nearest edge of the habitat', site.edgeDistanceM, 'm'],
    ['soil', 'soil', site.soil],
    ['management', 'management', site.management]
  ]
}

function trapFacts({id, trap}: TrapEvent, {study: {settings}}: SeasonEvents): Iterable<MeasurementRow> {
  const type = trap.trapType === undefined ? undefined : settings.trap_types?.[trap.trapType]
  return facts(id, [
    ['trap', 'trap', type?.container],
    ['rim-diameter', 'inner diameter of the rim', type?.rim_diameter_mm, 'mm'],
    ['trap-depth', 'depth of the trap', type?.depth_mm, 'mm'],
    ['fluid', 'fluid', fluidWords(trap.fluid, settings.fluids)]
  ])
}

function visitFacts(
  {id, exposure, trap}: VisitEvent,
  {study: {settings}}: SeasonEvents
): Iterable<MeasurementRow> {
  const {condition, rim, fluid, fluidLeftMm, coverState, vertebratesCount, vertebratesWhat} = exposure
  const other =
    fluid === undefined || fluid === trap.trap.fluid ? undefined : fluidWords(fluid, settings.fluids)
  return facts(id, [
    ['condition', 'state in which the trap was found', condition],
    ['rim', 'how the rim stood to the soil', rim],
    ['fluid', 'fluid', other],
    ['fluid-left', 'depth of the fluid found', fluidLeftMm, 'mm'],
    ['cover', 'state of the cover', coverState],
    ['vertebrates', 'vertebrates found in the trap', vertebratesCount],
    ['vertebrates-what', 'which vertebrates', vertebratesWhat]
  ])
}

function fluidWords(
  fluid: string | undefined,
  declared: SeasonEvents['study']['settings']['fluids']
): string | undefined {
  const stated = fluid === undefined ? undefined : declared?.[fluid]
  if (stated === undefined) return fluid
  const {substance = fluid, dilution} = stated
  return dilution === undefined ? substance : `${substance}, ${dilution} with water`
}
