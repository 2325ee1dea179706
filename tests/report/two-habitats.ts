import type {Measure, MeasureKind} from '../../src/model/quantity.ts'
import type {
  AssemblageResult,
  CatchResult,
  EffortResult,
  Results,
  SiteResult,
  TaxonResult
} from '../../src/model/results.ts'
import {
  blankAssemblage,
  blankLayout,
  blankResults,
  blankScope,
  blankSetAside
} from '../results/blank-results.ts'

type UnitWords = readonly [one: string, many: string]

/** A measure with a label that no table should show. */
export function measure(
  value: number,
  kind: MeasureKind = 'count',
  unit?: UnitWords,
  more: object = {}
): Measure {
  return {label: 'label', kind, value, ...(unit !== undefined && {unit}), ...more}
}

export function notDefined(reason: string, kind: MeasureKind = 'diversity'): Measure {
  return {label: 'label', kind, notDefined: reason}
}

const animals = (value: number) => measure(value, 'count', ['individual', 'individuals'])
const things = (value: number, one: string) => measure(value, 'count', [one, `${one}s`])
const nights = (value: number) => measure(value, 'nights', ['trap-night', 'trap-nights'])
const species = (value: number) => measure(value, 'count', ['species', 'species'])
const share = (value: number) => measure(value, 'share')
const diverse = (value: number, more: object = {}) => measure(value, 'diversity', undefined, more)

function effort(planned: number, net: number, unsorted = 0, exposures = planned / 10): EffortResult {
  const lost = planned - net - unsorted
  return {
    exposures: things(exposures, 'exposure'),
    planned: nights(planned),
    exposed: nights(planned),
    net: nights(net),
    unsorted: nights(unsorted),
    lost: nights(lost),
    shareLost: share(lost / planned)
  }
}

function caught(
  individuals: number,
  outside: number,
  names: number,
  net: number,
  units: number
): CatchResult {
  const value = (100 * individuals) / net
  const method = units > 1 ? 'between sampling units' : 'counting error only, not a range for the habitat'
  return {
    individuals: animals(individuals),
    names: things(names, 'name'),
    outsideEffort: animals(outside),
    total: animals(individuals + outside),
    rate: measure(value, 'rate', ['individual per 100 trap-nights', 'individuals per 100 trap-nights'], {
      interval: {low: value / 2, high: value * 2, confidence: 0.95, method}
    })
  }
}

const efforts = {
  wood: effort(80, 75),
  field: effort(40, 30, 10),
  w1: effort(40, 40),
  w2: effort(40, 35),
  all: effort(120, 105, 10)
}
const catches = {
  wood: caught(13, 0, 3, 75, 2),
  field: caught(10, 1, 2, 30, 1),
  w1: caught(7, 0, 2, 40, 1),
  w2: caught(6, 0, 2, 35, 1),
  all: caught(23, 1, 4, 105, 3)
}

interface TaxonCounts {
  readonly wood: number
  readonly field: number
  readonly outside?: number
  readonly sites: number
  readonly females?: number
  readonly males?: number
  readonly immatures?: number
  readonly bySite: Readonly<Record<string, number>>
}

function taxon(taxon: string, counts: TaxonCounts, more: Partial<TaxonResult>): TaxonResult {
  const {wood, field, outside = 0, sites, females = 0, males = 0, immatures = 0, bySite} = counts
  const habitat = (id: string, individuals: number, net: number, outsideEffort: number) => ({
    id,
    individuals: animals(individuals),
    outsideEffort: animals(outsideEffort),
    sites: things(1, 'site'),
    rate: measure((100 * individuals) / net, 'rate')
  })
  return {
    taxon,
    inTaxaTable: true,
    individuals: animals(wood + field),
    outsideEffort: animals(outside),
    total: animals(wood + field + outside),
    share: share((wood + field) / 23),
    sites: things(sites, 'site'),
    rate: measure((100 * (wood + field)) / 105, 'rate'),
    females: animals(females),
    males: animals(males),
    immatures: animals(immatures),
    habitats: [habitat('wood', wood, 75, 0), habitat('field', field, 30, outside)],
    bySite: Object.entries(bySite).map(([id, total]) => ({id, total: animals(total)})),
    ...more
  }
}

const beetle = {class: 'Insecta', order: 'Coleoptera', family: 'Carabidae', rank: 'species'} as const

/** In systematic order; the second is too sensitive to be tied to a site. */
const taxa: TaxonResult[] = [
  taxon(
    'Abax parallelepipedus',
    {wood: 10, field: 0, sites: 2, females: 3, males: 2, bySite: {w1: 6, w2: 4}},
    {
      ...beetle,
      authority: '(Piller & Mitterpacher, 1783)',
      englishName: 'parallel-sided ground beetle',
      redList: 'near threatened'
    }
  ),
  taxon(
    'Carabus intricatus',
    {wood: 2, field: 0, sites: 1, bySite: {}},
    {
      ...beetle,
      authority: 'Linnaeus, 1761',
      sensitive: 1,
      legalStatus: 'protected'
    }
  ),
  taxon(
    'Poecilus cupreus',
    {wood: 0, field: 8, outside: 1, sites: 1, bySite: {f1: 9}},
    {...beetle, authority: '(Linnaeus, 1758)'}
  ),
  taxon(
    'Lycosidae',
    {wood: 1, field: 2, sites: 2, immatures: 3, bySite: {w1: 1, f1: 2}},
    {
      class: 'Arachnida',
      order: 'Araneae',
      family: 'Lycosidae',
      rank: 'family'
    }
  )
]

function site(id: string, name: string, habitat: 'wood' | 'field', more: Partial<SiteResult>): SiteResult {
  return {
    id,
    name,
    habitat,
    habitatLabel: habitat === 'wood' ? 'oak wood' : 'barley field',
    style: habitat === 'wood' ? 0 : 1,
    locality: 'Hidden Hollow',
    position: {shown: 'withheld', because: 'the owner asked for it'},
    layout: {...blankLayout, name: id},
    structure: [measure(8, 'number', ['mm', 'mm'], {label: 'depth of the litter'})],
    traps: things(2, 'trap'),
    rounds: things(2, 'round'),
    firstOpened: '2026-05-28',
    lastCollected: '2026-06-17',
    removal: {
      recorded: things(2, 'trap'),
      notRecorded: things(0, 'trap'),
      gone: things(0, 'trap'),
      lastRemoved: '2026-06-17'
    },
    effort: efforts.w1,
    lostBecause: ['traps were flooded', 'traps were gone'],
    kinds: {species: things(2, 'kind'), others: animals(1)},
    catch: catches.w1,
    groups: [],
    taxa: [],
    withheldTaxa: things(0, 'kind'),
    worthKnowing: [],
    listed: [],
    vertebrates: {
      recorded: true,
      count: things(0, 'vertebrate'),
      perThousand: measure(0, 'rate'),
      notLooked: things(0, 'exposure'),
      events: []
    },
    ...more
  }
}

const listed = (taxon: string, individuals: number, total = individuals) => ({
  taxon,
  individuals: animals(individuals),
  total: animals(total)
})

const vole = {
  site: 'w2',
  trap: 'w2-1',
  collected: '2026-06-07',
  count: things(1, 'vertebrate'),
  what: 'bank vole'
}

const sites: SiteResult[] = [
  site('w1', 'Fold Wood', 'wood', {
    taxa: [listed('Abax parallelepipedus', 6), listed('Lycosidae', 1)],
    position: {
      shown: 'rounded',
      latitude: '55.40',
      longitude: '3.20',
      precision: '0.01',
      because: 'it was decided so for the whole study'
    }
  }),
  site('w2', 'Badger Holt', 'wood', {
    effort: efforts.w2,
    catch: catches.w2,
    taxa: [listed('Abax parallelepipedus', 4)],
    withheldTaxa: things(1, 'kind'),
    structure: [],
    removal: {
      recorded: things(1, 'trap'),
      notRecorded: things(1, 'trap'),
      gone: things(1, 'trap'),
      lastRemoved: '2026-06-17'
    },
    vertebrates: {
      recorded: true,
      count: things(1, 'vertebrate'),
      perThousand: measure(25, 'rate'),
      notLooked: things(0, 'exposure'),
      events: [vole]
    },
    listed: [{taxon: 'Abax parallelepipedus', status: 'red list: near threatened', total: animals(4)}]
  }),
  site('f1', 'Top Field', 'field', {
    effort: efforts.field,
    catch: catches.field,
    taxa: [listed('Poecilus cupreus', 8, 9), listed('Lycosidae', 2)]
  })
]

function assemblage(
  of: AssemblageResult['of'],
  id: string,
  label: string,
  counts: readonly number[],
  net: number
): AssemblageResult {
  const individuals = counts.reduce((sum, count) => sum + count, 0)
  const interval = {
    low: counts.length,
    high: counts.length + 4,
    confidence: 0.95,
    method: 'log-normal (Chao 1987)'
  }
  const none = notDefined('the sample is too small for asymptotic diversity')
  return {
    of,
    id,
    label,
    style: 0,
    sites: things(1, 'site'),
    net: nights(net),
    individuals: animals(individuals),
    species: species(counts.length),
    singletons: species(counts.filter((count) => count === 1).length),
    doubletons: species(counts.filter((count) => count === 2).length),
    coverage: measure(0.9, 'coverage'),
    chao1: measure(counts.length, 'estimate', undefined, {standardError: 0.5, interval}),
    hill: {
      q0: {observed: diverse(counts.length), asymptotic: none},
      q1: {observed: diverse(1.5), asymptotic: none},
      q2: {observed: diverse(1.4), asymptotic: none}
    },
    shannon: diverse(0.45),
    giniSimpson: diverse(0.28),
    pielou: diverse(0.65),
    bergerParker: diverse(0.83),
    ...blankAssemblage,
    allNames: {species: species(counts.length + 1), chao1: diverse(counts.length + 1)},
    curves: [],
    ranks:
      of === 'site'
        ? []
        : counts.map((count, index) => ({
            rank: index + 1,
            taxon: taxa[index]?.taxon ?? '',
            individuals: count,
            share: count / individuals
          }))
  }
}

function trap(
  id: string,
  site: string,
  habitat: string,
  effortOfTrap: EffortResult,
  individuals: number
): Results['traps'][number] {
  return {id, site, habitat, effort: effortOfTrap, catch: caught(individuals, 0, 2, 20, 1)}
}

const rows = (value: number) => things(value, 'row')

/** Two habitats, three sites and four names: small enough to add up in the head. */
export const twoHabitats: Results = {
  ...blankResults,
  format: 'pitfolio-results',
  formatVersion: 1,
  stated: {title: 'Two habitats', place: {datum: 'WGS84'}},
  statedAt: {'/title': 'study.yaml:1:8'},
  issued: '2026-11-14',
  season: '2026',
  confidence: 0.95,
  seed: 1,
  records: {
    tables: [
      {
        table: 'visits',
        file: 'visits.csv',
        readAs: 'UTF-8, comma',
        read: rows(13),
        used: rows(12),
        setAside: rows(1),
        reasons: [{code: 'duplicate-visit', rows: rows(1)}]
      },
      {
        table: 'catch',
        file: 'catch.csv',
        readAs: 'UTF-8, comma',
        read: rows(9),
        used: rows(8),
        setAside: rows(1),
        reasons: [{code: 'unknown-trap', rows: rows(1)}]
      }
    ],
    findings: {
      errors: things(2, 'finding'),
      cautions: things(1, 'finding'),
      notes: things(0, 'finding'),
      total: things(3, 'finding')
    },
    readRows: rows(22),
    usedRows: rows(20),
    setAsideRows: rows(2),
    leftUnrecorded: things(0, 'exposure'),
    judgedOtherwise: [],
    byCode: [
      {
        code: 'duplicate-visit',
        severity: 'error',
        findings: things(1, 'finding'),
        summary: 'its effort would count twice'
      },
      {
        code: 'unknown-trap',
        severity: 'error',
        findings: things(1, 'finding'),
        summary: 'its catch belongs nowhere'
      },
      {
        code: 'taxon-not-in-taxa-table',
        severity: 'caution',
        findings: things(1, 'finding'),
        summary: 'it has no group'
      }
    ]
  },
  design: {
    unit: 'site',
    habitats: things(2, 'habitat'),
    sites: things(3, 'site'),
    traps: things(6, 'trap'),
    rounds: things(2, 'round'),
    exposures: things(12, 'exposure'),
    singleSiteHabitats: ['barley field'],
    confounded: [{what: 'fluid', detail: 'oak wood: pg; barley field: water'}],
    sharedRounds: things(1, 'round'),
    unsharedRounds: ['R2'],
    supportsComparison: false,
    nearestWithin: measure(1200, 'metres'),
    nearestBetween: measure(800, 'metres'),
    nearestAny: {smallest: measure(800, 'metres'), largest: measure(1200, 'metres')}
  },
  protocol: {
    effortKnownFor: 'exposures',
    firstOpened: '2026-05-28',
    lastCollected: '2026-06-17',
    intervalShortest: measure(10, 'nights', ['night', 'nights']),
    intervalMedian: measure(10, 'nights', ['night', 'nights']),
    intervalLongest: measure(10, 'nights', ['night', 'nights']),
    roundsAchieved: things(2, 'round'),
    settlingShortest: measure(7, 'nights', ['night', 'nights']),
    firstInstalled: '2026-05-21',
    lastInstalled: '2026-05-21',
    settlingLongest: measure(7, 'nights', ['night', 'nights']),
    positionUncertainty: measure(50, 'metres'),
    catchRecords: things(12, 'record'),
    identifiedBy: [{who: 'Fern Loomweaver', records: things(12, 'record')}],
    verifiedBy: [{who: 'Sedge Lantern', records: things(3, 'record')}],
    verifiedRecords: things(3, 'record'),
    voucherRecords: things(2, 'record'),
    trapsPerSiteSmallest: things(2, 'trap'),
    trapsPerSiteLargest: things(2, 'trap'),
    nightsFrom: 'dates',
    mixedTimes: false,
    trapTypes: [
      {
        id: 'cup',
        traps: things(4, 'trap'),
        stated: {container: 'plastic cup', rim_diameter_mm: 80, funnel: false, cover: true}
      },
      {id: 'jar', traps: things(2, 'trap'), stated: {container: 'glass jar', cover: 'plywood'}}
    ],
    fluids: [
      {
        id: 'pg',
        traps: things(6, 'trap'),
        stated: {substance: 'propylene glycol', dilution: '1:2', bait: false}
      }
    ],
    conditions: [
      {
        condition: 'intact',
        credit: 'all nights',
        exposures: things(11, 'exposure'),
        exposed: nights(110),
        net: nights(100)
      },
      {
        condition: 'trampled',
        meaning: 'dented by deer',
        credit: 'half the nights',
        exposures: things(1, 'exposure'),
        exposed: nights(10),
        net: nights(5)
      }
    ],
    lostExposures: [],
    sampleFractionUsed: false,
    pooled: false
  },
  effort: efforts.all,
  catch: catches.all,
  vertebrates: {
    recorded: true,
    count: things(1, 'vertebrate'),
    perThousand: measure(8.33, 'rate'),
    notLooked: things(0, 'exposure'),
    events: [vole]
  },
  sensitivity: {
    variants: (['declared', 'full'] as const).map((id) => ({
      id,
      label: id === 'full' ? 'full credit' : 'credits of this study',
      habitats: [
        {
          id: 'wood',
          label: 'oak wood',
          net: nights(id === 'full' ? 80 : 75),
          individuals: animals(13),
          rate: catches.wood.rate
        },
        {
          id: 'field',
          label: 'barley field',
          net: nights(30),
          individuals: animals(10),
          rate: catches.field.rate
        }
      ]
    })),
    smallestShareLost: share(0),
    largestShareLost: share(0.0625),
    differenceInShareLost: share(0.0625),
    lossDiffers: false,
    setAside: blankSetAside
  },
  habitats: [
    {
      id: 'wood',
      label: 'oak wood',
      style: 0,
      vegetation: 'oak over bramble',
      sites: things(2, 'site'),
      traps: things(4, 'trap'),
      rounds: things(2, 'round'),
      effort: efforts.wood,
      catch: catches.wood,
      groups: [{id: 'beetles', label: 'ground beetles, adults', catch: caught(12, 0, 2, 75, 2)}],
      shareOfCatch: share(13 / 23)
    },
    {
      id: 'field',
      label: 'barley field',
      style: 1,
      sites: things(1, 'site'),
      traps: things(2, 'trap'),
      rounds: things(2, 'round'),
      effort: efforts.field,
      catch: catches.field,
      groups: [{id: 'beetles', label: 'ground beetles, adults', catch: caught(8, 1, 1, 30, 1)}],
      shareOfCatch: share(10 / 23)
    }
  ],
  sites,
  rounds: [
    {
      id: 'R1',
      firstOpened: '2026-05-28',
      lastCollected: '2026-06-07',
      effort: effort(60, 60),
      catch: caught(14, 0, 3, 60, 3),
      habitats: [
        {id: 'wood', label: 'oak wood', style: 0, effort: effort(40, 40), catch: caught(4, 0, 2, 40, 2)},
        {id: 'field', label: 'barley field', style: 1, effort: effort(20, 20), catch: caught(10, 0, 2, 20, 1)}
      ]
    },
    {
      id: 'R2',
      lastCollected: '2026-06-17',
      effort: effort(60, 45, 10),
      catch: caught(9, 1, 3, 45, 3),
      habitats: [
        {id: 'wood', label: 'oak wood', style: 0, effort: effort(40, 35), catch: caught(9, 0, 3, 35, 2)},
        {
          id: 'field',
          label: 'barley field',
          style: 1,
          effort: effort(20, 10, 10),
          catch: caught(0, 1, 0, 10, 1)
        }
      ]
    }
  ],
  traps: [
    trap('w1-1', 'w1', 'wood', effort(20, 20), 4),
    trap('w1-2', 'w1', 'wood', effort(20, 20), 3),
    trap('w2-1', 'w2', 'wood', effort(20, 20), 4),
    trap('w2-2', 'w2', 'wood', effort(20, 15), 2),
    trap('f1-1', 'f1', 'field', effort(20, 20), 10),
    trap('f1-2', 'f1', 'field', effort(20, 10, 10), 0)
  ],
  taxa,
  scopes: [
    {
      id: 'beetles',
      label: 'ground beetles, adults',
      leftOut: [{taxon: 'Lycosidae', individuals: animals(3), reason: 'it names only a family'}],
      leftOutIndividuals: animals(3),
      study: assemblage('study', 'study', 'whole study', [10, 2, 8], 105),
      habitats: [
        assemblage('habitat', 'wood', 'oak wood', [10, 2], 75),
        assemblage('habitat', 'field', 'barley field', [8], 30)
      ],
      sites: [
        assemblage('site', 'w1', 'Fold Wood', [6], 40),
        assemblage('site', 'w2', 'Badger Holt', [4, 2], 35),
        assemblage('site', 'f1', 'Top Field', [8], 30)
      ],
      rankable: false,
      ...blankScope
    }
  ],
  checklist: [
    {
      id: 'effort',
      item: 'total effort, planned and achieved',
      status: 'reported',
      detail: '105 of 120 trap-nights'
    },
    {id: 'permits', item: 'permits', status: 'not recorded', detail: 'study.yaml says nothing of permits'}
  ]
}
