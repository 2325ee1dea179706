import {isDefined, type Measure} from '../model/quantity.ts'
import {betweenUnitsMethod, countingErrorMethod} from '../statistics/ratio-rate.ts'
import {shareBetweenUnitsMethod} from '../statistics/ratio-share.ts'
import {defined, type Method, type Sections} from './method.ts'

/** Methods of effort, rates and shares. */
export const rateMethods: readonly Method[] = [
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
  {
    id: 'share-interval',
    name: 'interval of a share between sampling units',
    used: (results) => shares(results).some((share) => intervalMethod(share) === shareBetweenUnitsMethod)
  },
  {
    id: 'binomial-interval',
    name: 'exact interval of a binomial share',
    used: (results) => shares(results).some((share) => intervalMethod(share) === countingErrorMethod)
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
  }
]

function intervalMethod(measure: Measure): string | undefined {
  return isDefined(measure) ? measure.interval?.method : undefined
}

function shares({scopes, sexesAndStages: {sexes, stages}}: Sections): Measure[] {
  const classes = scopes
    .flatMap(({guilds, bodySizes}) => [guilds, bodySizes])
    .flatMap(({study, habitats}) => {
      return [study, ...habitats.map((habitat) => habitat.classes)].flat()
    })
  const ofStages = stages.flatMap((taxon) =>
    [taxon.stages, ...taxon.habitats.map((own) => own.stages)].flat()
  )
  const ofFemales = sexes.flatMap((taxon) => [taxon, ...taxon.habitats].map(({shareFemale}) => shareFemale))
  return [...classes.map(({share}) => share), ...ofStages.map(({share}) => share), ...ofFemales]
}

function rates(results: Sections): Measure[] {
  const parts = [results, ...results.habitats, ...results.sites, ...results.rounds, ...results.traps]
  return parts.map(({catch: {rate}}) => rate)
}
