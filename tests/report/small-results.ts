import type {Measure, MeasureKind} from '../../src/model/quantity.ts'
import type {CatchResult, EffortResult, Results} from '../../src/model/results.ts'
import {blankLayout, blankResults} from '../results/blank-results.ts'

/** A measure with as little as it needs. */
export function measure(
  value: number,
  kind: MeasureKind = 'count',
  unit?: readonly [string, string],
  more: object = {}
): Measure {
  return {label: 'a number', kind, value, ...(unit && {unit}), ...more}
}

export function notDefined(reason: string, kind: MeasureKind = 'rate'): Measure {
  return {label: 'a number', kind, notDefined: reason}
}

const traps = ['trap', 'traps'] as const
const nights = ['trap-night', 'trap-nights'] as const
const individuals = ['individual', 'individuals'] as const
const none = notDefined('nothing was counted', 'count')

function effort(net: number, planned: number): EffortResult {
  return {
    exposures: measure(net / 10),
    planned: measure(planned, 'nights', nights),
    exposed: measure(planned, 'nights', nights),
    net: measure(net, 'nights', nights),
    unsorted: measure(0, 'nights', nights),
    lost: measure(planned - net, 'nights', nights),
    shareLost: measure((planned - net) / planned, 'share')
  }
}

function caught(count: number, net: number): CatchResult {
  const rate = (100 * count) / net
  return {
    individuals: measure(count, 'count', individuals),
    names: measure(3, 'count', ['name', 'names']),
    outsideEffort: measure(0, 'count', individuals),
    total: measure(count, 'count', individuals),
    rate: measure(rate, 'rate', ['individual per 100 trap-nights', 'individuals per 100 trap-nights'], {
      interval: {low: rate * 0.77, high: rate * 1.26, confidence: 0.95, method: 'bootstrap of sites'}
    })
  }
}

const noVertebrates = {
  recorded: true,
  count: measure(0),
  perThousand: measure(0, 'rate'),
  notLooked: measure(0),
  events: []
}

function site(id: string, name: string, habitat: string, style: number): Results['sites'][number] {
  return {
    id,
    name,
    habitat,
    habitatLabel: `${habitat} wood`,
    style,
    management: 'grazed from May',
    position: {shown: 'withheld', because: 'the owner asked for it'},
    layout: {...blankLayout, name: id},
    structure: [],
    traps: measure(6, 'count', traps),
    rounds: measure(2),
    removal: {recorded: measure(6), notRecorded: measure(0), gone: measure(0)},
    effort: effort(120, 140),
    lostBecause: ['traps were flooded'],
    kinds: {species: measure(3, 'count', ['kind', 'kinds']), others: measure(0)},
    catch: caught(64, 120),
    groups: [],
    taxa: [],
    worthKnowing: [],
    withheldTaxa: measure(0),
    listed: [],
    vertebrates: noVertebrates
  }
}

function habitat(id: string, label: string, style: number, trapCount: number): Results['habitats'][number] {
  return {
    id,
    label,
    style,
    sites: measure(1, 'count', ['site', 'sites']),
    traps: measure(trapCount, 'count', traps),
    rounds: measure(2),
    effort: effort(120, 140),
    catch: caught(64, 120),
    groups: [],
    shareOfCatch: measure(0.5, 'share')
  }
}

function taxon(name: string, rank: string): Results['taxa'][number] {
  return {
    taxon: name,
    rank,
    inTaxaTable: true,
    individuals: measure(40, 'count', individuals),
    outsideEffort: measure(0),
    total: measure(40),
    share: measure(0.3, 'share'),
    sites: measure(2),
    rate: measure(17, 'rate'),
    females: none,
    males: none,
    immatures: none,
    habitats: [],
    bySite: []
  }
}

const small = {
  ...blankResults,
  format: 'pitfolio-results',
  formatVersion: 1,
  stated: {
    title: 'Beetles of Ash | Elm',
    limitations: 'the summer was dry.',
    permits: '*none* | <script>alert(1)</script> :value[seed]',
    thanks: 'A & B (first)  and\n  others',
    report: {text: {introduction: 'text/introduction.md', discussion: 'text/missing.md'}},
    trap_types: {cup: {rim_diameter_mm: 66}}
  },
  statedAt: {'/title': 'study.yaml:1:8'},
  issued: '2026-10-01',
  season: '2026',
  confidence: 0.95,
  seed: 1,
  records: {
    tables: [],
    findings: {
      errors: measure(1, 'count', ['error', 'errors']),
      cautions: measure(0),
      notes: measure(0),
      total: measure(1)
    },
    readRows: measure(1),
    usedRows: measure(0),
    setAsideRows: measure(1),
    leftUnrecorded: measure(0),
    judgedOtherwise: [],
    byCode: []
  },
  design: {
    unit: 'site',
    habitats: measure(2),
    sites: measure(2),
    traps: measure(12, 'count', traps),
    rounds: measure(2),
    exposures: measure(24),
    singleSiteHabitats: ['oak', 'ash'],
    confounded: [],
    sharedRounds: measure(2),
    unsharedRounds: [],
    supportsComparison: false,
    nearestWithin: none,
    nearestBetween: none,
    nearestAny: {smallest: measure(412, 'metres', ['metre', 'metres']), largest: none}
  },
  protocol: {
    effortKnownFor: 'exposures',
    firstOpened: '2026-05-28',
    lastCollected: '2026-06-11',
    intervalShortest: measure(7, 'nights', ['night', 'nights']),
    intervalMedian: measure(7, 'nights', ['night', 'nights']),
    intervalLongest: measure(7, 'nights', ['night', 'nights']),
    roundsAchieved: measure(2),
    settlingShortest: none,
    settlingLongest: none,
    trapsPerSiteSmallest: measure(6),
    trapsPerSiteLargest: measure(6),
    nightsFrom: 'dates',
    mixedTimes: false,
    trapTypes: [],
    fluids: [],
    conditions: [],
    sampleFractionUsed: false,
    pooled: false
  },
  effort: effort(240, 280),
  catch: caught(1593, 240),
  vertebrates: noVertebrates,
  habitats: [habitat('oak', 'Oak wood', 0, 1), habitat('ash', 'Ash wood', 1, 12)],
  sites: [site('o1', 'Upper Oak', 'oak', 0), site('a1', 'Lower Ash', 'ash', 1)],
  rounds: [],
  traps: [],
  taxa: [taxon('Carabus nemoralis', 'species'), taxon('Linyphiidae', 'family'), taxon('Amara', 'genus')],
  scopes: [
    {
      id: 'carabidae',
      label: 'Ground beetles',
      study: {chao1: notDefined('no species was caught once', 'estimate')}
    }
  ]
}

/** Two habitats of one site each: as much of the results as it takes to try every directive, and no more. */
export const smallResults = small as unknown as Results
