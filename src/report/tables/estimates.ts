import type {Measure} from '../../model/quantity.ts'
import type {AssemblageResult} from '../../model/results.ts'
import type {TableDefinition} from '../table.ts'
import {assemblages} from './assemblages.ts'
import {cell} from './cell.ts'
import {noteColumn, numberColumn, wordColumn} from './column.ts'
import {confidenceWords} from './rate-columns.ts'
import {standardError} from './standard-error.ts'

interface Estimate {
  readonly measure: Measure
  readonly name: string
  readonly basedOn: string
  readonly kind: 'as caught' | 'estimate' | 'lower bound'
  /** Which form of the estimator. */
  readonly form?: string
}

export const estimates: TableDefinition = {
  name: 'estimates',
  summary: 'Every estimate of richness, diversity and completeness, with its basis and its interval.',
  tables: ({results}) =>
    results.scopes.map((scope) => ({
      name: `estimates-${scope.id}`,
      columns: [
        wordColumn('Assemblage'),
        wordColumn('Estimate'),
        wordColumn('Based on'),
        wordColumn('Kind'),
        wordColumn('Form'),
        numberColumn('Value'),
        numberColumn('Standard error'),
        numberColumn('Interval', confidenceWords(results)),
        noteColumn('Kind of interval')
      ],
      rows: assemblages(scope).flatMap((assemblage) =>
        estimatesOf(assemblage).map(({measure, name, basedOn, kind, form}) => [
          cell.text(assemblage.label),
          cell.text(name),
          cell.text(basedOn),
          cell.text(kind),
          cell.text(form),
          cell.measure(measure),
          cell.measure(standardError(measure)),
          cell.interval(measure),
          cell.method(measure)
        ])
      ),
      empty: 'There is no catch in this group.'
    }))
}

function estimatesOf({
  coverage,
  hill,
  chao1,
  estimators,
  incidence,
  allNames
}: AssemblageResult): readonly Estimate[] {
  const caught = 'the pooled catch'
  const rare = 'singletons and doubletons'
  const all = 'every count'
  const richness: readonly Estimate[] =
    estimators.length === 0
      ? [{measure: chao1, name: 'species, Chao1', basedOn: rare, kind: 'lower bound'}]
      : estimators.map(({estimator, variant, basedOn, kind, estimate}) => ({
          measure: estimate,
          name: `species, ${estimator}`,
          basedOn,
          kind,
          form: variant
        }))
  return [
    {measure: coverage, name: 'sample coverage', basedOn: rare, kind: 'estimate'},
    {measure: incidence.coverage, name: 'sample coverage', basedOn: 'sampling units', kind: 'estimate'},
    {measure: hill.q0.observed, name: 'species, q = 0', basedOn: caught, kind: 'as caught'},
    ...richness,
    {measure: hill.q1.observed, name: 'common species, q = 1', basedOn: caught, kind: 'as caught'},
    {measure: hill.q1.asymptotic, name: 'common species, q = 1 asymptotic', basedOn: all, kind: 'estimate'},
    {measure: hill.q2.observed, name: 'dominant species, q = 2', basedOn: caught, kind: 'as caught'},
    {measure: hill.q2.asymptotic, name: 'dominant species, q = 2 asymptotic', basedOn: all, kind: 'estimate'},
    {measure: allNames.species, name: 'names, every name counted', basedOn: caught, kind: 'as caught'},
    {
      measure: allNames.chao1,
      name: 'names, Chao1 with every name counted',
      basedOn: rare,
      kind: 'lower bound'
    }
  ]
}
