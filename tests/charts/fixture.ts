import type {Measure, MeasureKind} from '../../src/model/quantity.ts'
import type {
  AssemblageResult,
  CatchResult,
  EffortResult,
  HabitatResult,
  Results,
  RoundResult,
  ScopeResult,
  SiteResult,
  TaxonResult
} from '../../src/model/results.ts'
import {siteMap} from '../../src/results/site-map.ts'
import {blankResults, blankSetAside} from '../results/blank-results.ts'
import {describedAssemblage, describedScope, levelOf} from './described-scope.ts'

/** What a habitat of the invented study is like; everything else follows from it. */
export interface HabitatPlan {
  readonly id: string
  readonly label: string
  /** Catch of each name within the scope, most numerous first. */
  readonly counts: readonly number[]
  /** Share of the planned nights that were lost, 0 to 1. */
  readonly lost?: number
  readonly unsorted?: number
  /** Individuals per 100 trap-nights of each site; null: no trap-night counts. */
  readonly siteRates: readonly (number | null)[]
  /** Half-width of the interval on the log scale; absent: no interval. */
  readonly spread?: number
  /** Rates of the rounds as multiples of the habitat's rate; null: nothing counts in that round. */
  readonly season?: readonly (number | null)[]
}

const ground = [
  'Pterostichus melanarius',
  'Pterostichus oblongopunctatus',
  'Abax parallelepipedus',
  'Nebria brevicollis',
  'Poecilus versicolor'
]

export const threeHabitats: readonly HabitatPlan[] = [
  {
    id: 'oak',
    label: 'Oak wood',
    counts: [188, 121, 96, 40, 33, 20, 14, 9, 7, 5, 4, 3, 2, 2, 1, 1, 1, 1],
    lost: 0.043,
    siteRates: [41.2, 55.8, 36.4, 62.1],
    spread: 0.28,
    season: [0.7, 1.4, 1.2, 0.9, 0.5]
  },
  {
    id: 'meadow',
    label: 'Hay meadow',
    counts: [96, 90, 84, 52, 41, 38, 30, 22, 16, 14, 11, 9, 8, 6, 5, 5, 4, 3, 3, 2, 2, 2, 1, 1, 1, 1, 1, 1],
    lost: 0.12,
    unsorted: 56,
    siteRates: [33.1, 21.7, 48.9, 30.2],
    spread: 0.45,
    season: [0.3, 0.8, 1.5, 1.6, 0.6]
  },
  {
    id: 'wall',
    label: 'Field margin along the old stone wall',
    counts: [31, 12, 9, 7, 5, 3, 2, 1, 1, 1, 1],
    lost: 0.27,
    siteRates: [8.4, 15.2, 11.9],
    spread: 0.7,
    season: [0.6, 1.1, null, 1.3, 0.8]
  }
]

export const bareHabitat: HabitatPlan = {
  id: 'quarry',
  label: 'Quarry floor',
  counts: [],
  siteRates: [0, 0],
  lost: 0.1,
  spread: 1,
  season: [0, 0, 0, 0, 0]
}

const roundDays = [
  ['2026-04-19', '2026-05-03'],
  ['2026-05-17', '2026-05-31'],
  ['2026-06-14', '2026-06-28'],
  ['2026-07-12', '2026-07-26'],
  ['2026-09-06', '2026-09-20']
] as const

export function measure(
  label: string,
  kind: MeasureKind,
  value: number | null,
  more: Partial<Measure> = {}
): Measure {
  if (value === null) return {label, kind, notDefined: 'no trap-night counts'}
  return {label, kind, value, ...more} as Measure
}

const count = (value: number): Measure => measure('count', 'count', value)

function effort(planned: number, lostShare: number, unsorted: number): EffortResult {
  const lost = Math.round(planned * lostShare)
  return {
    exposures: count(planned / 14),
    planned: measure('planned', 'nights', planned),
    exposed: measure('exposed', 'nights', planned - lost),
    net: measure('net', 'nights', planned - lost - unsorted),
    unsorted: measure('unsorted', 'nights', unsorted),
    lost: measure('lost', 'nights', lost),
    shareLost: measure('share lost', 'share', planned === 0 ? null : lost / planned)
  }
}

function caught(rate: number | null, individuals: number, spread?: number): CatchResult {
  const interval =
    spread === undefined || rate === null
      ? {}
      : {
          interval: {
            low: rate * Math.exp(-spread),
            high: rate === 0 ? 0.6 : rate * Math.exp(spread),
            confidence: 0.95,
            method:
              rate === 0
                ? 'counting error only, not a range for the habitat'
                : 'ratio estimate between sampling units, t distribution on the log scale'
          }
        }
  return {
    individuals: count(individuals),
    names: count(5),
    outsideEffort: count(0),
    total: count(individuals),
    rate: measure('activity-density', 'rate', rate, interval)
  }
}

function curve(
  order: 0 | 1 | 2,
  plan: HabitatPlan,
  caughtInAll: number,
  species: number
): AssemblageResult['curves'][number] {
  const level = levelOf(order, species)
  const half = order === 0 ? caughtInAll * 0.35 : caughtInAll * 0.06 * plan.siteRates.length
  const sizes = Array.from({length: 60}, (_, index) =>
    Math.max(1, Math.round((caughtInAll * 2 * (index + 1)) / 60))
  )
  const distinct = [...new Set([1, ...sizes])]
  return {
    order,
    points: distinct.map((size) => {
      const value = 1 + ((level - 1) * (size - 1)) / (size - 1 + half)
      const beyond = size > caughtInAll
      const spread = value * (beyond ? 0.2 : 0.08)
      return {size, value, beyond, low: Math.max(1, value - spread), high: value + spread}
    })
  }
}

function assemblage(
  plan: HabitatPlan,
  style: number,
  of: AssemblageResult['of'] = 'habitat'
): AssemblageResult {
  const individuals = plan.counts.reduce((sum, each) => sum + each, 0)
  const species = plan.counts.length
  const orders = species === 0 ? [] : ([0, 1, 2] as const)
  const diversity = (value: number) => measure('diversity', 'diversity', species === 0 ? null : value)
  const hill = (value: number) => ({observed: diversity(value), asymptotic: diversity(value * 1.1)})
  return {
    of,
    id: plan.id,
    label: plan.label,
    style,
    sites: count(plan.siteRates.length),
    net: measure('net', 'nights', 1000),
    individuals: count(individuals),
    species: count(species),
    singletons: count(plan.counts.filter((each) => each === 1).length),
    doubletons: count(plan.counts.filter((each) => each === 2).length),
    coverage: measure('coverage', 'coverage', species === 0 ? null : 0.986),
    chao1: measure('Chao1', 'estimate', species === 0 ? null : species * 1.2),
    hill: {q0: hill(species), q1: hill(species * 0.48), q2: hill(species * 0.29)},
    shannon: diversity(2),
    giniSimpson: diversity(0.8),
    pielou: diversity(0.8),
    bergerParker: diversity(0.3),
    ...describedAssemblage(plan),
    allNames: {
      species: count(species),
      chao1: measure('Chao1', 'estimate', species === 0 ? null : species * 1.2)
    },
    curves: orders.map((order) => curve(order, plan, individuals, species)),
    ranks: plan.counts.map((each, index) => ({
      rank: index + 1,
      taxon: ground[index] ?? `Carabidae sp. ${index + 1}`,
      individuals: each,
      share: each / individuals
    }))
  }
}

function scope(id: string, label: string, plans: readonly HabitatPlan[]): ScopeResult {
  const all: HabitatPlan = {
    id: 'study',
    label: 'All habitats',
    counts: plans.flatMap((plan) => plan.counts),
    siteRates: [1]
  }
  return {
    id,
    label,
    leftOut: [],
    leftOutIndividuals: count(0),
    study: assemblage(all, 0, 'study'),
    habitats: plans.map((plan, style) => assemblage(plan, style)),
    sites: [],
    rankable: false,
    ...describedScope(plans, roundDays)
  }
}

function rateOf(plan: HabitatPlan): number | null {
  const rates = plan.siteRates.filter((rate) => rate !== null)
  return rates.length === 0 ? null : rates.reduce((sum, rate) => sum + rate, 0) / rates.length
}

function habitat(plan: HabitatPlan, style: number): HabitatResult {
  const individuals = plan.counts.reduce((sum, each) => sum + each, 0)
  return {
    id: plan.id,
    label: plan.label,
    style,
    sites: count(plan.siteRates.length),
    traps: count(plan.siteRates.length * 5),
    rounds: count(5),
    effort: effort(plan.siteRates.length * 350, plan.lost ?? 0, plan.unsorted ?? 0),
    catch: caught(rateOf(plan), individuals, plan.spread),
    groups: [],
    shareOfCatch: measure('share', 'share', 0.3)
  }
}

function sitesOf(plan: HabitatPlan, style: number): SiteResult[] {
  return plan.siteRates.map((rate, index) => ({
    id: `${plan.id}-${index + 1}`,
    name: `${plan.label} ${index + 1}`,
    habitat: plan.id,
    habitatLabel: plan.label,
    style,
    position: positionOf(style, index),
    layout: layoutOf(`${plan.id}-${index + 1}`, style),
    structure: [],
    traps: count(5),
    rounds: count(5),
    removal: {recorded: count(5), notRecorded: count(0), gone: count(0)},
    effort: effort(350, plan.lost ?? 0, 0),
    lostBecause: [],
    kinds: {species: count(3), others: count(0)},
    catch: caught(rate, rate === null ? 0 : Math.round(rate * 3.5)),
    groups: [],
    taxa: [],
    withheldTaxa: count(0),
    worthKnowing: [],
    listed: [],
    vertebrates: noVertebrates
  }))
}

/** Of every habitat one site in a square with others, some positions exact, and the last of four kept back. */
function positionOf(style: number, index: number): SiteResult['position'] {
  if (index === 3) return {shown: 'withheld', because: 'the owner asked for it'}
  const [latitude, longitude] = [51.2 + 0.01 * ((style * 3 + index) % 4), 9.1 + 0.02 * index]
  if (index === 2)
    return {
      shown: 'exact',
      latitude: (latitude + 0.0037).toFixed(4),
      longitude: (longitude + 0.0021).toFixed(4)
    }
  return {
    shown: 'rounded',
    latitude: latitude.toFixed(2),
    longitude: longitude.toFixed(2),
    precision: '0.01',
    because: 'it was decided so for the whole study'
  }
}

/** Five traps: in a line, or in a cross. */
function layoutOf(site: string, style: number): SiteResult['layout'] {
  const line = [0, 1, 2, 3, 4].map((step) => [step * 10, 0] as const)
  const cross = [
    [0, 10],
    [10, 0],
    [10, 10],
    [10, 20],
    [20, 10]
  ] as const
  const traps = (style % 2 === 0 ? line : cross).map(([eastM, northM], index) => ({
    id: `${site}-${index + 1}`,
    eastM,
    northM
  }))
  return {name: site, traps, notPlaced: count(0)}
}

const noVertebrates = {
  recorded: false,
  count: count(0),
  perThousand: measure('per 1,000', 'rate', 0),
  notLooked: count(0),
  events: []
}

function rounds(plans: readonly HabitatPlan[]): RoundResult[] {
  return roundDays.map(([firstOpened, lastCollected], index) => ({
    id: `${index + 1}`,
    firstOpened,
    lastCollected,
    effort: effort(700, 0.05, 0),
    catch: caught(20, 140),
    habitats: plans.flatMap((plan, style) => {
      const factor = plan.season?.[index]
      const rate = rateOf(plan)
      if (factor === undefined) return []
      const value = factor === null || rate === null ? null : factor * rate
      return [
        {
          id: plan.id,
          label: plan.label,
          style,
          effort: effort(210, 0, 0),
          catch: caught(value, Math.round((value ?? 0) * 2.1), plan.spread)
        }
      ]
    })
  }))
}

function taxon(name: string, rank: string): TaxonResult {
  return {
    taxon: name,
    rank,
    inTaxaTable: true,
    individuals: count(1),
    outsideEffort: count(0),
    total: count(1),
    share: measure('share', 'share', 0.1),
    sites: count(1),
    rate: measure('rate', 'rate', 1),
    females: count(0),
    males: count(0),
    immatures: count(0),
    habitats: [],
    bySite: []
  }
}

/** Results of an invented season with the habitats given. */
export function resultsOf(plans: readonly HabitatPlan[]): Results {
  const nothing = count(0)
  const sites = plans.flatMap(sitesOf)
  return {
    ...blankResults,
    format: 'pitfolio-results',
    formatVersion: 1,
    stated: {},
    statedAt: {},
    season: '2026',
    confidence: 0.95,
    seed: 1,
    records: {
      tables: [],
      findings: {errors: nothing, cautions: nothing, notes: nothing, total: nothing},
      readRows: nothing,
      usedRows: nothing,
      setAsideRows: nothing,
      leftUnrecorded: nothing,
      judgedOtherwise: [],
      byCode: []
    },
    design: {
      unit: 'site',
      habitats: count(plans.length),
      sites: count(4),
      traps: count(20),
      rounds: count(5),
      exposures: count(100),
      singleSiteHabitats: [],
      confounded: [],
      sharedRounds: count(5),
      unsharedRounds: [],
      supportsComparison: true,
      nearestWithin: nothing,
      nearestBetween: nothing,
      nearestAny: {smallest: nothing, largest: nothing}
    },
    protocol: {
      effortKnownFor: 'exposures',
      intervalShortest: nothing,
      intervalMedian: nothing,
      intervalLongest: nothing,
      roundsAchieved: nothing,
      settlingShortest: nothing,
      settlingLongest: nothing,
      positionUncertainty: nothing,
      catchRecords: count(0),
      identifiedBy: [],
      verifiedBy: [],
      verifiedRecords: count(0),
      voucherRecords: count(0),
      trapsPerSiteSmallest: nothing,
      trapsPerSiteLargest: nothing,
      nightsFrom: 'dates',
      mixedTimes: false,
      trapTypes: [],
      fluids: [],
      conditions: [],
      lostExposures: [],
      sampleFractionUsed: false,
      pooled: false
    },
    effort: effort(3850, 0.1, 56),
    catch: caught(30, 1000),
    vertebrates: noVertebrates,
    sensitivity: {
      variants: [],
      smallestShareLost: nothing,
      largestShareLost: nothing,
      differenceInShareLost: nothing,
      lossDiffers: false,
      setAside: blankSetAside
    },
    habitats: plans.map(habitat),
    sites,
    map: siteMap(sites),
    rounds: plans.length === 0 ? [] : rounds(plans),
    traps: [],
    taxa: [...ground.map((name) => taxon(name, 'species')), taxon('Carabidae sp. 6', 'morphospecies')],
    scopes: plans.length === 0 ? [] : [scope('carabidae', 'Ground beetles', plans)],
    checklist: []
  }
}

/** So many habitats, alike but for scale, with names from short to long. */
export function manyHabitats(howMany: number): HabitatPlan[] {
  const names = [
    'Ash',
    'Beech wood',
    'Wet heath with cross-leaved heath',
    'Arable',
    'Set-aside field, third year',
    'River shingle'
  ]
  return Array.from({length: howMany}, (_, index) => {
    const like = threeHabitats[index % 3]!
    const scale = 0.4 + ((index * 7) % 11) / 8
    return {
      ...like,
      id: `h${index + 1}`,
      label: `${names[index % names.length]} ${index + 1}`,
      counts: like.counts.map((each) => Math.max(1, Math.round(each * scale))),
      siteRates: like.siteRates.map((rate) => (rate === null ? null : rate * scale))
    }
  })
}

/** Very long and very short labels, very large and very small catches, an interval wider than any axis, gaps. */
export const extremeHabitats: readonly HabitatPlan[] = [
  {
    id: 'scarp',
    label:
      'Unimproved calcareous grassland on the steep south-facing scarp above the abandoned quarry railway',
    counts: [
      12034,
      8031,
      6020,
      5011,
      ...Array.from({length: 60}, (_, index) => Math.max(1, 2000 - 60 * index))
    ],
    siteRates: [900, 1220],
    spread: 3.2,
    lost: 0.02,
    unsorted: 333,
    season: [1, 1, 1, 1, 1]
  },
  {
    id: 'oak',
    label: 'Oak',
    counts: [1],
    lost: 1,
    siteRates: [0.4, 0.7],
    spread: 1.2,
    season: [1, null, 1, null, 1]
  },
  {
    id: 'word',
    label: 'Donaudampfschifffahrtsgesellschaftswiese',
    counts: [2, 1, 1],
    siteRates: [null, 3.1],
    season: []
  }
]

/** Labels that would break out of markup, of expressions or of lines. */
export const oddHabitats: readonly HabitatPlan[] = threeHabitats.map((plan, index) => ({
  ...plan,
  label: ['<b>"Oak" & \'ash\'</b>', "datum['x'].y[0]", 'two\nlines\tand a tab'][index] ?? plan.label
}))
