import type {ComparisonResult, Results} from '../../model/results.ts'
import {asSentence} from '../plain-text.ts'

/** The comparisons of activity-density between habitats: of all names, then of each group. */
export function comparisons({comparison, scopes}: Results): readonly ComparisonResult[] {
  return [comparison, ...scopes.map((scope) => scope.comparison)]
}

/** What stands in place of a table of a comparison that was not made. */
export function notCompared({reasons}: {readonly reasons: readonly string[]}): string {
  return reasons.length === 0
    ? 'The habitats were not compared.'
    : asSentence(`not compared, because ${reasons.join('; ')}`)
}
