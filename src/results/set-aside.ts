import type {Measure} from '../model/quantity.ts'
import type {SetAsideResult} from '../model/results.ts'
import type {UsableStudy} from '../model/study.ts'
import type {Analysis} from './analysis.ts'
import {counted, share, words} from './counted.ts'
import type {Parts} from './parts.ts'
import {setAsideEffect} from './set-aside-effect.ts'

/** What the headline count would be with the rows of the catch table that were set aside, as far as they can be read. */
export function setAsideResult(
  {study, balance, catchSetAside, catchRepeated = 0}: UsableStudy,
  analysis: Analysis,
  parts: Parts
): SetAsideResult {
  const rows = balance.find(({table}) => table === 'catch')?.setAside ?? 0
  const inUse = study.catch.reduce((sum, {count}) => sum + count, 0)
  const known = catchSetAside ?? (rows === 0 ? [] : undefined)
  const animals = known?.reduce((sum, {count}) => sum + count, 0)
  const individuals = (label: string, value: number | undefined): Measure =>
    value === undefined
      ? {label, kind: 'count', notDefined: 'the rows set aside are not at hand'}
      : counted(label, value, words.individuals)
  const shareLabel = 'Share of individuals that stand in rows set aside'
  return {
    rows: counted('Rows of the catch table that were set aside', rows, words.rows),
    repeated: counted('Rows set aside because they repeat another', catchRepeated, words.rows),
    readable:
      known === undefined
        ? {
            label: 'Rows set aside with a whole count',
            kind: 'count',
            notDefined: 'the rows set aside are not at hand'
          }
        : counted('Rows set aside with a whole count', known.length, words.rows),
    individuals: individuals('Individuals in rows set aside with a whole count', animals),
    withoutThem: individuals('Individuals in the rows in use', inUse),
    withThem: individuals(
      'Individuals with the rows set aside',
      animals === undefined ? undefined : inUse + animals
    ),
    shareSetAside:
      animals === undefined
        ? {label: shareLabel, kind: 'share', notDefined: 'the rows set aside are not at hand'}
        : share(shareLabel, animals, inUse + animals, 'nothing was caught'),
    ...setAsideEffect(known ?? [], analysis, parts)
  }
}
