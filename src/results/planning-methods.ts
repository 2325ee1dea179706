import {isDefined} from '../model/quantity.ts'
import type {PlanningResult} from '../model/results.ts'
import {defined, type Method, type Sections} from './method.ts'

/** Methods that tell of another season. */
export const planningMethods: readonly Method[] = [
  {
    id: 'planned-coverage',
    name: 'effort for a target coverage',
    used: planned(({habitats}) =>
      habitats.some(({nightsForCoverage: nights}) => nights && isDefined(nights) && nights.value > 0)
    )
  },
  {
    id: 'planned-rate',
    name: 'effort for a target width of the interval of a rate',
    used: planned(({habitats}) =>
      habitats.some(({halfWidth, unitsForRate}) => defined(halfWidth) || defined(unitsForRate))
    )
  },
  {
    id: 'planned-ratio',
    name: 'smallest ratio that a layout would show, by simulation',
    used: planned(({detection}) => defined(detection.ratio))
  }
]

function planned(holds: (planning: PlanningResult) => boolean | undefined): (results: Sections) => boolean {
  return ({planning, scopes}) => [planning, ...scopes.map((scope) => scope.planning)].some(holds)
}
