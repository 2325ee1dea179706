import type {Measure} from '../../model/quantity.ts'
import type {AssemblageResult} from '../../model/results.ts'
import type {TableDefinition} from '../table.ts'
import {assemblages} from './assemblages.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {confidenceWords} from './rate-columns.ts'

interface Estimate {
  readonly measure: Measure
  readonly name: string
  readonly basedOn: string
  readonly kind: 'as caught' | 'estimate' | 'lower bound'
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
        numberColumn('Value'),
        numberColumn('Standard error'),
        numberColumn('Interval', confidenceWords(results)),
        wordColumn('What the interval is')
      ],
      rows: assemblages(scope).flatMap((assemblage) =>
        estimatesOf(assemblage).map(({measure, name, basedOn, kind}) => [
          cell.text(assemblage.label),
          cell.text(name),
          cell.text(basedOn),
          cell.text(kind),
          cell.measure(measure),
          cell.measure(standardErrorOf(measure)),
          cell.interval(measure),
          cell.method(measure)
        ])
      ),
      empty: 'There is no catch in this group.'
    }))
}

function estimatesOf({coverage, hill, chao1, allNames}: AssemblageResult): readonly Estimate[] {
  const caught = 'the pooled catch'
  const rare = 'singletons and doubletons'
  const all = 'every count'
  return [
    {measure: coverage, name: 'sample coverage', basedOn: rare, kind: 'estimate'},
    {measure: hill.q0.observed, name: 'species, q = 0', basedOn: caught, kind: 'as caught'},
    {measure: chao1, name: 'species, Chao1', basedOn: rare, kind: 'lower bound'},
    {measure: hill.q0.asymptotic, name: 'species, q = 0 asymptotic', basedOn: rare, kind: 'lower bound'},
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

/** The standard error as a measure of the same kind, so that it is rounded as its estimate is. */
function standardErrorOf(measure: Measure): Measure | undefined {
  if (!('value' in measure) || measure.standardError === undefined) return undefined
  return {label: `standard error of ${measure.label}`, kind: measure.kind, value: measure.standardError}
}
