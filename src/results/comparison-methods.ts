import type {ComparisonResult} from '../model/results.ts'
import {defined, type Method, type Sections} from './method.ts'

/** Methods that set habitats or sites side by side. */
export const comparisonMethods: readonly Method[] = [
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

function compared(holds: (comparison: ComparisonResult) => boolean): (results: Sections) => boolean {
  return ({comparison, scopes}) => holds(comparison) || scopes.some((scope) => holds(scope.comparison))
}

function pairsOfPlaces({scopes}: Sections): boolean {
  return scopes.some(
    ({dissimilarities: {sites, habitats}}) => sites.items.length > 1 || habitats.items.length > 1
  )
}
