import type {Measure} from '../model/quantity.ts'
import type {EstimatorResult, IncidenceResult} from '../model/results.ts'
import {occasionWords} from './incidence.ts'

interface Estimates {
  readonly chao1: Measure
  readonly ace: Measure
  readonly doubletons: number
  readonly incidence: IncidenceResult
  readonly duplicates: number
}

/** The long table: every estimate of the number of species with its variant, what it rests on and what it is. */
export function estimatorResults({
  chao1,
  ace,
  doubletons,
  incidence,
  duplicates
}: Estimates): EstimatorResult[] {
  const individuals = 'individuals'
  const units = `sampling units (${occasionWords[incidence.unit]})`
  return [
    {
      estimator: 'Chao1',
      variant:
        doubletons > 0 ? 'S + ((n − 1)/n) f1²/(2 f2)' : 'S + ((n − 1)/n) f1 (f1 − 1)/2, without doubletons',
      basedOn: individuals,
      kind: 'lower bound',
      estimate: chao1
    },
    {
      estimator: 'ACE',
      variant: 'rare: at most 10 individuals',
      basedOn: individuals,
      kind: 'estimate',
      estimate: ace
    },
    {
      estimator: 'Chao2',
      variant:
        duplicates > 0 ? 'S + ((T − 1)/T) Q1²/(2 Q2)' : 'S + ((T − 1)/T) Q1 (Q1 − 1)/2, without duplicates',
      basedOn: units,
      kind: 'lower bound',
      estimate: incidence.chao2
    },
    {
      estimator: 'ICE',
      variant: 'infrequent: in at most 10 sampling units',
      basedOn: units,
      kind: 'estimate',
      estimate: incidence.ice
    },
    {
      estimator: 'Jackknife 1',
      variant: 'first order',
      basedOn: units,
      kind: 'estimate',
      estimate: incidence.jackknife1
    },
    {
      estimator: 'Jackknife 2',
      variant: 'second order',
      basedOn: units,
      kind: 'estimate',
      estimate: incidence.jackknife2
    }
  ]
}
