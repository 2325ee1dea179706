import {isDefined, type Measure} from '../model/quantity.ts'
import type {AssemblageResult, ComparisonResult, MethodUsed, Results} from '../model/results.ts'
import {betweenUnitsMethod, countingErrorMethod} from '../statistics/ratio-rate.ts'

type Sections = Omit<Results, 'methodsUsed'>

/** Every method that results can rest on, with the question whether these do. */
const methods: readonly {
  readonly id: string
  readonly name: string
  readonly used: (results: Sections) => boolean
}[] = [
  {
    id: 'ratio-interval',
    name: 'interval of a ratio of totals between sampling units',
    used: (results) =>
      rates(results).some((rate) => isDefined(rate) && rate.interval?.method === betweenUnitsMethod)
  },
  {
    id: 'poisson-interval',
    name: 'exact interval of a Poisson count',
    used: (results) =>
      rates(results).some((rate) => isDefined(rate) && rate.interval?.method === countingErrorMethod)
  },
  {id: 'rim-rate', name: 'activity-density by metre of rim', used: ({catch: {rimRate}}) => defined(rimRate)},
  {
    id: 'raised-counts',
    name: 'counts raised to whole samples',
    used: ({protocol}) => protocol.sampleFractionUsed
  },
  {
    id: 'half-credit',
    name: 'part of the effort of failed traps credited',
    used: ({protocol}) => protocol.conditions.some(({credit}) => credit.startsWith('half the nights'))
  },
  {
    id: 'great-circle',
    name: 'great-circle distance',
    used: ({design: {nearestAny}}) => defined(nearestAny.smallest)
  },
  {id: 'hill-numbers', name: 'Hill numbers', used: any(({hill}) => defined(hill.q0.observed))},
  {id: 'shannon', name: 'Shannon entropy', used: any(({shannon}) => defined(shannon))},
  {id: 'gini-simpson', name: 'Gini-Simpson index', used: any(({giniSimpson}) => defined(giniSimpson))},
  {id: 'pielou', name: 'Pielou evenness', used: any(({pielou}) => defined(pielou))},
  {
    id: 'berger-parker',
    name: 'Berger-Parker dominance',
    used: any(({bergerParker}) => defined(bergerParker))
  },
  {id: 'coverage', name: 'sample coverage', used: any(({coverage}) => defined(coverage))},
  {id: 'chao1', name: 'Chao1', used: any(({chao1}) => defined(chao1))},
  {id: 'ace', name: 'ACE', used: any(({ace}) => defined(ace))},
  {id: 'chao2', name: 'Chao2', used: any(({incidence}) => defined(incidence.chao2))},
  {id: 'ice', name: 'ICE', used: any(({incidence}) => defined(incidence.ice))},
  {
    id: 'jackknife',
    name: 'jackknife of orders 1 and 2',
    used: any(({incidence}) => defined(incidence.jackknife1))
  },
  {
    id: 'asymptotic-diversity',
    name: 'asymptotic diversity of orders 1 and 2',
    used: any(({hill}) => defined(hill.q1.asymptotic))
  },
  {
    id: 'rarefaction',
    name: 'rarefaction and extrapolation by individuals',
    used: any(({curves}) => curves.some(({points}) => points.length > 0))
  },
  {
    id: 'incidence-rarefaction',
    name: 'rarefaction and extrapolation by sampling units',
    used: any(({incidence}) => incidence.curves.some(({at}) => at.length > 0))
  },
  {
    id: 'assemblage-bootstrap',
    name: 'bootstrap of the estimated assemblage',
    used: any(({coverage}) => isDefined(coverage) && coverage.interval !== undefined)
  },
  {
    id: 'equal-coverage',
    name: 'comparison at equal coverage',
    used: ({scopes}) => scopes.some(({equalCoverage}) => defined(equalCoverage.coverage))
  },
  {
    id: 'partition',
    name: 'alpha, beta and gamma diversity',
    used: ({scopes}) =>
      scopes.some(({partitions}) => partitions.some(({orders}) => orders.some(({gamma}) => defined(gamma))))
  },
  ...(['sorensen', 'jaccard', 'bray-curtis'] as const).map((id) => ({
    id,
    name: {
      sorensen: 'Sorensen dissimilarity',
      jaccard: 'Jaccard dissimilarity',
      'bray-curtis': 'Bray-Curtis dissimilarity'
    }[id],
    used: pairsOfPlaces
  })),
  {id: 'turnover-nestedness', name: 'turnover and nestedness', used: pairsOfPlaces},
  {
    id: 'negative-binomial',
    name: 'negative binomial model of counts',
    used: compared(({method}) => method === 'negative binomial')
  },
  {id: 'poisson-model', name: 'Poisson model of counts', used: compared(({method}) => method === 'Poisson')},
  {
    id: 'kruskal-wallis',
    name: 'Kruskal-Wallis test',
    used: compared(({method, test}) => method === 'Kruskal-Wallis' && defined(test.statistic))
  },
  {
    id: 'permutation',
    name: 'permutation test',
    used: (results) =>
      compared(({test}) => defined(test.p))(results) ||
      results.scopes.some(({composition, indicators}) => {
        return defined(composition.permanova.p) || indicators.species.some(({p}) => defined(p))
      })
  },
  {
    id: 'holm',
    name: 'Holm adjustment',
    used: (results) =>
      compared(({ratios}) => ratios.some(({adjustedP}) => defined(adjustedP)))(results) ||
      results.scopes.some(({indicators}) => indicators.species.some(({adjustedP}) => defined(adjustedP)))
  },
  {
    id: 'permanova',
    name: 'permutational analysis of variance',
    used: ({scopes}) => scopes.some(({composition}) => defined(composition.permanova.r2))
  },
  {
    id: 'dispersion',
    name: 'test of dispersion',
    used: ({scopes}) => scopes.some(({composition}) => defined(composition.dispersion.p))
  },
  {
    id: 'principal-coordinates',
    name: 'principal coordinates',
    used: ({scopes}) => scopes.some(({composition}) => composition.principalCoordinates.scores.length > 0)
  },
  {
    id: 'non-metric-scaling',
    name: 'non-metric multidimensional scaling',
    used: ({scopes}) => scopes.some(({composition}) => composition.nonMetricScaling.scores.length > 0)
  },
  {
    id: 'indicator-value',
    name: 'indicator value',
    used: ({scopes}) => scopes.some(({indicators}) => indicators.species.length > 0)
  }
]

/** The methods that results rest on, for the methods text: named when, and only when, they were used. */
export function methodsUsed(results: Sections): MethodUsed[] {
  return methods.filter(({used}) => used(results)).map(({id, name}) => ({id, name}))
}

function defined(measure: Measure | undefined): boolean {
  return measure !== undefined && isDefined(measure)
}

function any(holds: (assemblage: AssemblageResult) => boolean): (results: Sections) => boolean {
  return ({scopes}) =>
    scopes.some(({study, habitats, sites}) => holds(study) || habitats.some(holds) || sites.some(holds))
}

function compared(holds: (comparison: ComparisonResult) => boolean): (results: Sections) => boolean {
  return ({comparison, scopes}) => holds(comparison) || scopes.some((scope) => holds(scope.comparison))
}

function pairsOfPlaces({scopes}: Sections): boolean {
  return scopes.some(
    ({dissimilarities: {sites, habitats}}) => sites.items.length > 1 || habitats.items.length > 1
  )
}

function rates(results: Sections): Measure[] {
  const parts = [results, ...results.habitats, ...results.sites, ...results.rounds, ...results.traps]
  return parts.map(({catch: {rate}}) => rate)
}
