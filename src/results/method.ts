import {isDefined, type Measure} from '../model/quantity.ts'
import type {Results} from '../model/results.ts'

export type Sections = Omit<Results, 'methodsUsed'>

/** A method that results can rest on, with the question whether these do. */
export interface Method {
  readonly id: string
  readonly name: string
  readonly used: (results: Sections) => boolean
}

export function defined(measure: Measure | undefined): boolean {
  return measure !== undefined && isDefined(measure)
}
