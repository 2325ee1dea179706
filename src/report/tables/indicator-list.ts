import type {Results, ScopeResult} from '../../model/results.ts'
import {hiddenFromHabitats} from '../../model/withheld-taxa.ts'
import type {ReportTable} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {notCompared} from './comparisons.ts'

/** The first so many indicator values of a scope, largest first; without columns of p where none is given. */
export function indicatorList(
  results: Results,
  {id, indicators}: ScopeResult,
  name: string,
  length: number
): ReportTable {
  const ranks = new Map(results.taxa.map(({taxon, rank}) => [taxon, rank]))
  const hidden = hiddenFromHabitats(results)
  const tested = indicators.supported && !indicators.withheld
  return {
    name: `${name}-${id}`,
    columns: [
      wordColumn('Species'),
      wordColumn('Habitat'),
      numberColumn('A', 'specificity'),
      numberColumn('B', 'fidelity'),
      numberColumn('Indicator value', 'A × B'),
      ...(tested ? [numberColumn('p', 'by permutation'), numberColumn('p', 'Holm-adjusted')] : [])
    ],
    rows: indicators.species
      .filter(({taxon}) => !hidden.has(taxon))
      .slice(0, length)
      .map(({taxon, label, specificity, fidelity, value, p, adjustedP}) => [
        cell.name({taxon, rank: ranks.get(taxon)}),
        cell.text(label),
        cell.measure(specificity),
        cell.measure(fidelity),
        cell.measure(value),
        ...(tested ? [cell.measure(p), cell.measure(adjustedP)] : [])
      ]),
    empty: notCompared(indicators)
  }
}
