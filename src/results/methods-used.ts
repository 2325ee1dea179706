import type {MethodUsed} from '../model/results.ts'
import {comparisonMethods} from './comparison-methods.ts'
import {diversityMethods} from './diversity-methods.ts'
import type {Sections} from './method.ts'
import {planningMethods} from './planning-methods.ts'
import {rateMethods} from './rate-methods.ts'

/** The methods that results rest on, for the methods text: named when, and only when, they were used. */
export function methodsUsed(results: Sections): MethodUsed[] {
  return [...rateMethods, ...diversityMethods, ...comparisonMethods, ...planningMethods]
    .filter(({used}) => used(results))
    .map(({id, name}) => ({id, name}))
}
