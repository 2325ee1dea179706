import {isDefined} from '../model/quantity.ts'
import type {AssemblageResult} from '../model/results.ts'
import {defined, type Method, type Sections} from './method.ts'

/** Methods of diversity and completeness. */
export const diversityMethods: readonly Method[] = [
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
  }
]

function any(holds: (assemblage: AssemblageResult) => boolean): (results: Sections) => boolean {
  return ({scopes}) =>
    scopes.some(({study, habitats, sites}) => holds(study) || habitats.some(holds) || sites.some(holds))
}
