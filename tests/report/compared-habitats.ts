import {countingErrorMethod} from '../../src/model/counting-error.ts'
import type {Measure, MeasureKind} from '../../src/model/quantity.ts'
import type {
  AssemblageResult,
  ComparisonResult,
  PermutationsResult,
  Results,
  ScopeResult
} from '../../src/model/results.ts'
import {blankComparison, blankScope} from '../results/blank-results.ts'
import {measure, twoHabitats} from './two-habitats.ts'

/** Two habitats that can be compared, with every section of the comparison filled in; the numbers are made up. */
const ranged = (value: number, low: number, high: number, kind: MeasureKind = 'ratio'): Measure =>
  measure(value, kind, undefined, {interval: {low, high, confidence: 0.95, method: 'made up'}})
const ratio = (value: number) => measure(value, 'ratio')
const p = (value: number) => measure(value, 'probability')
const diversity = (value: number) => measure(value, 'diversity')
const things = (value: number, one: string) => measure(value, 'count', [one, `${one}s`])
const degrees = (value: number) => measure(value, 'count', ['degree of freedom', 'degrees of freedom'])
const species = (value: number) => measure(value, 'count', ['species', 'species'])

export const permutations: PermutationsResult = {
  distinct: things(35, 'arrangement'),
  tried: things(35, 'arrangement'),
  exhaustive: true,
  floor: p(1 / 35)
}

const wood = {id: 'wood', label: 'oak wood', style: 0}
const field = {id: 'field', label: 'barley field', style: 1}
const site = (id: string, label: string, habitat: 'wood' | 'field') => ({
  id,
  label,
  habitat,
  style: habitat === 'wood' ? 0 : 1
})

function comparison(of: string): ComparisonResult {
  return {
    ...blankComparison,
    supported: true,
    notes: ['Habitats are compared within blocks, of which there are 4.'],
    of,
    units: things(8, 'sampling unit'),
    blocks: things(4, 'block'),
    rounds: ['R1', 'R2'],
    habitats: [wood, field].map((habitat) => ({
      ...habitat,
      units: things(4, 'sampling unit'),
      individuals: measure(100),
      net: measure(200, 'nights'),
      rate: measure(habitat === wood ? 50 : 25, 'rate')
    })),
    method: 'negative binomial',
    theta: measure(7.5, 'ratio', undefined, {standardError: 2.5}),
    coefficients: [{term: 'intercept', estimate: measure(-0.7, 'ratio', undefined, {standardError: 0.2})}],
    test: {statistic: ratio(6.25), degreesOfFreedom: degrees(1), p: p(0.0571), permutations},
    ratios: [
      {
        of: 'field',
        ofLabel: 'barley field',
        to: 'wood',
        toLabel: 'oak wood',
        ratio: ranged(0.5, 0.31, 0.81),
        p: p(0.011),
        adjustedP: p(0.012),
        degreesOfFreedom: degrees(3),
        influential: site('f1', 'Top Field', 'field'),
        without: ratio(0.61)
      }
    ],
    residualDegreesOfFreedom: degrees(3),
    residuals: [
      {
        ...site('f1', 'Top Field', 'field'),
        individuals: measure(30),
        net: measure(50, 'nights'),
        expected: ratio(22),
        residual: ratio(1.4)
      }
    ]
  }
}

const diverse = {
  size: things(40, 'individual'),
  beyond: true,
  q0: ranged(9.5, 7, 13, 'diversity'),
  q1: ranged(5, 4, 6, 'diversity'),
  q2: ranged(3, 2, 4, 'diversity')
}
const plain = {...diverse, beyond: false, q0: diversity(6), q1: diversity(4), q2: diversity(2.5)}

const season = (taxon: string): ScopeResult['season'][number] => ({
  taxon,
  individuals: things(12, 'individual'),
  rounds: things(2, 'round'),
  first: {
    round: 'R1',
    opened: '2026-05-28',
    collected: '2026-06-07',
    individuals: measure(4),
    rate: measure(6, 'rate')
  },
  last: {round: 'R2', collected: '2026-06-17', individuals: measure(8), rate: measure(17, 'rate')},
  highest: {round: 'R2', collected: '2026-06-17', individuals: measure(8), rate: measure(17, 'rate')},
  rates: [6, 17]
})

/** Between sites where there is something to differ by, else from counting alone. */
const shareOf = (share: number): Measure =>
  share > 0 && share < 1
    ? ranged(share, 0.2, 0.8, 'share')
    : measure(share, 'share', undefined, {
        interval: {low: 0.4 * share, high: 0.6 + 0.4 * share, confidence: 0.95, method: countingErrorMethod}
      })

const planning = (of: string): Results['planning'] => ({
  of,
  coverageTarget: measure(0.99, 'coverage'),
  halfWidthTarget: measure(0.25, 'share'),
  theta: ratio(12),
  habitats: [
    {
      ...wood,
      net: measure(75, 'nights'),
      units: things(2, 'site'),
      coverage: measure(0.9, 'coverage'),
      nightsForCoverage: measure(120, 'nights'),
      halfWidth: measure(0.61, 'share'),
      nightsForRate: {label: 'further trap-nights', kind: 'nights', notDefined: 'more units are needed'},
      unitsForRate: things(5, 'site')
    }
  ],
  detection: {
    ratio: ratio(2.35),
    raised: 'barley field',
    level: measure(0.05, 'number'),
    power: measure(0.8, 'share'),
    simulations: things(200, 'season')
  }
})

const classes = (shares: readonly number[]) =>
  ['predator', 'seed eater'].map((name, index) => ({
    class: name,
    individuals: measure(10 * (shares[index] ?? 0)),
    share: shareOf(shares[index] ?? 0),
    species: measure(index + 1)
  }))

const indicator = (taxon: string, habitat: typeof wood, value: number) => ({
  taxon,
  ...habitat,
  specificity: ratio(value),
  fidelity: ratio(1),
  value: ratio(value),
  p: p(0.029),
  adjustedP: p(0.057)
})

function described(assemblage: AssemblageResult): AssemblageResult {
  return {
    ...assemblage,
    estimators: [
      {
        estimator: 'Chao1',
        variant: 'S + ((n − 1)/n) f1²/(2 f2)',
        basedOn: 'individuals',
        kind: 'lower bound',
        estimate: assemblage.chao1
      },
      {
        estimator: 'Jackknife 1',
        variant: 'first order',
        basedOn: 'sampling units (a site in a round)',
        kind: 'estimate',
        estimate: measure(4.5, 'estimate', undefined, {standardError: 1.2})
      }
    ]
  }
}

const [beetles] = twoHabitats.scopes

const scope: ScopeResult = {
  ...beetles!,
  ...blankScope,
  study: described(beetles!.study),
  habitats: beetles!.habitats.map(described),
  equalCoverage: {
    coverage: measure(0.93, 'coverage'),
    habitats: [
      {...wood, ...diverse},
      {...field, ...diverse}
    ],
    leftOut: [],
    sites: [
      {...site('w1', 'Fold Wood', 'wood'), ...plain},
      {...site('w2', 'Badger Holt', 'wood'), ...plain},
      {...site('f1', 'Top Field', 'field'), ...plain}
    ]
  },
  partitions: [
    {
      id: 'habitats',
      label: 'between habitats',
      units: things(2, 'habitat'),
      leftOut: [],
      orders: ([0, 1, 2] as const).map((order) => ({
        order,
        alpha: diversity(5 - order),
        beta: measure(
          1.5 + order / 4,
          'diversity',
          undefined,
          order === 0 ? {caution: 'under-sampling inflates beta of order 0'} : {}
        ),
        gamma: diversity(8 - order)
      }))
    }
  ],
  dissimilarities: {
    sites: {
      ...blankScope.dissimilarities.sites,
      items: [
        site('w1', 'Fold Wood', 'wood'),
        site('w2', 'Badger Holt', 'wood'),
        site('f1', 'Top Field', 'field')
      ],
      sorensen: [[], [0.1], [0.8, 0.9]],
      jaccard: [[], [0.18], [0.89, 0.95]],
      brayCurtis: [[], [0.2], [0.7, 0.75]],
      turnover: [[], [0.1], [0.6, 0.65]],
      nestedness: [[], [0], [0.2, 0.25]],
      meanWithin: ratio(0.2),
      meanBetween: ratio(0.725)
    },
    habitats: {
      ...blankScope.dissimilarities.habitats,
      items: [
        {...wood, habitat: 'wood'},
        {...field, habitat: 'field'}
      ],
      sorensen: [[], [0.8]],
      jaccard: [[], [0.89]],
      brayCurtis: [[], [0.7]],
      turnover: [[], [0.6]],
      nestedness: [[], [0.2]],
      multiple: {sorensen: ratio(0.8), turnover: ratio(0.6), nestedness: ratio(0.2)}
    }
  },
  comparison: comparison('ground beetles, adults'),
  planning: planning('ground beetles, adults'),
  composition: {
    ...blankScope.composition,
    supported: true,
    transformation: 'individuals per 100 trap-nights, not transformed',
    units: things(8, 'sampling unit'),
    permanova: {
      r2: ratio(0.61),
      f: ratio(9.4),
      groupDegreesOfFreedom: degrees(1),
      residualDegreesOfFreedom: degrees(6),
      p: p(1 / 35),
      permutations
    },
    dispersion: {
      ...blankScope.composition.dispersion,
      f: ratio(1.3),
      groupDegreesOfFreedom: degrees(1),
      residualDegreesOfFreedom: degrees(6),
      p: p(0.31),
      permutations,
      habitats: [wood, field].map((habitat) => ({
        ...habitat,
        units: things(4, 'sampling unit'),
        distance: ratio(habitat === wood ? 0.21 : 0.34)
      })),
      cautions: ['With fewer than six sites in a habitat, a test that finds no difference shows nothing.']
    },
    principalCoordinates: {
      shares: [measure(0.62, 'share'), measure(0.17, 'share')],
      imaginary: ratio(0.01),
      scores: [
        {...site('w1', 'Fold Wood', 'wood'), at: [0.4, 0.1]},
        {...site('w2', 'Badger Holt', 'wood'), at: [0.35, -0.1]},
        {...site('f1', 'Top Field', 'field'), at: [-0.5, 0]}
      ]
    },
    nonMetricScaling: {
      ...blankScope.composition.nonMetricScaling,
      stress: ratio(0.07),
      starts: things(21, 'start'),
      startsAtBest: things(20, 'start')
    }
  },
  indicators: {
    ...blankScope.indicators,
    supported: true,
    tested: species(3),
    permutations,
    adjustedFloor: p(3 / 35),
    species: [indicator('Poecilus cupreus', field, 1), indicator('Carabus intricatus', wood, 0.75)]
  },
  season: [season('Abax parallelepipedus')],
  guilds: {
    recorded: true,
    known: things(18, 'individual'),
    unknown: things(2, 'individual'),
    classes: ['predator', 'seed eater'],
    study: classes([0.75, 0.25]),
    habitats: [
      {...wood, classes: classes([1, 0])},
      {...field, classes: classes([0.5, 0.5])}
    ]
  }
}

const allMethods = [
  'ratio-interval',
  'poisson-interval',
  'half-credit',
  'great-circle',
  'hill-numbers',
  'coverage',
  'shannon',
  'gini-simpson',
  'pielou',
  'berger-parker',
  'chao1',
  'ace',
  'chao2',
  'ice',
  'jackknife',
  'asymptotic-diversity',
  'rarefaction',
  'incidence-rarefaction',
  'assemblage-bootstrap',
  'equal-coverage',
  'partition',
  'sorensen',
  'jaccard',
  'bray-curtis',
  'turnover-nestedness',
  'negative-binomial',
  'poisson-model',
  'kruskal-wallis',
  'permutation',
  'holm',
  'permanova',
  'dispersion',
  'principal-coordinates',
  'non-metric-scaling',
  'indicator-value',
  'share-interval',
  'binomial-interval',
  'planned-coverage',
  'planned-rate',
  'planned-ratio'
]

export const comparedHabitats: Results = {
  ...twoHabitats,
  methodsUsed: allMethods.map((id) => ({id, name: id})),
  design: {
    ...twoHabitats.design,
    singleSiteHabitats: [],
    confounded: [],
    unsharedRounds: [],
    supportsComparison: true
  },
  comparison: comparison('all names'),
  planning: planning('all names'),
  scopes: [scope],
  sexesAndStages: {
    sexes: [
      {
        taxon: 'Abax parallelepipedus',
        females: measure(3),
        males: measure(2),
        undetermined: measure(5),
        shareFemale: ranged(0.6, 0.147, 0.947, 'share'),
        habitats: [
          {
            ...wood,
            females: measure(3),
            males: measure(2),
            undetermined: measure(5),
            shareFemale: ranged(0.6, 0.147, 0.947, 'share')
          }
        ]
      }
    ],
    stages: [
      {
        taxon: 'Lycosidae',
        stages: [{stage: 'juvenile', individuals: measure(3), share: ranged(0.75, 0.2, 0.97, 'share')}],
        habitats: [
          {...wood, stages: [{stage: 'juvenile', individuals: measure(1), share: measure(1, 'share')}]}
        ]
      }
    ]
  },
  sensitivity: {
    ...twoHabitats.sensitivity,
    setAside: {
      rows: things(3, 'row'),
      repeated: things(0, 'row'),
      readable: things(2, 'row'),
      individuals: things(7, 'individual'),
      withoutThem: things(23, 'individual'),
      withThem: things(30, 'individual'),
      shareSetAside: measure(7 / 30, 'share'),
      counted: things(2, 'row'),
      effect: [
        {
          of: 'all names',
          habitats: [
            {
              ...wood,
              without: {individuals: things(12, 'individual'), rate: measure(9, 'rate')},
              withThem: {individuals: things(19, 'individual'), rate: measure(14, 'rate')}
            }
          ]
        }
      ]
    }
  }
}

/** The same study as its design does not let it be compared. */
export function refused(reasons: readonly string[]): Results {
  const none = {...blankComparison, reasons: [...reasons]}
  return {
    ...comparedHabitats,
    methodsUsed: comparedHabitats.methodsUsed.filter(
      ({id}) =>
        ![
          'negative-binomial',
          'poisson-model',
          'kruskal-wallis',
          'holm',
          'permutation',
          'permanova',
          'dispersion',
          'indicator-value',
          'planned-ratio'
        ].includes(id)
    ),
    design: {...comparedHabitats.design, supportsComparison: false},
    comparison: none,
    planning: withoutRatio(comparedHabitats.planning, reasons),
    scopes: comparedHabitats.scopes.map((each) => ({
      ...each,
      comparison: none,
      planning: withoutRatio(each.planning, reasons),
      composition: {
        ...blankScope.composition,
        reasons: [...reasons],
        principalCoordinates: each.composition.principalCoordinates
      },
      indicators: {...blankScope.indicators, reasons: [...reasons]}
    }))
  }
}

function withoutRatio(planned: Results['planning'], reasons: readonly string[]): Results['planning'] {
  const {raised: _, ...detection} = planned.detection
  const ratio = {label: 'ratio', kind: 'ratio', notDefined: reasons.join('; ')} as const
  return {...planned, detection: {...detection, ratio}}
}
