import type {DissimilaritiesResult} from '../../model/results.ts'
import {asSentence} from '../plain-text.ts'
import type {ReportTable} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

/** Every pair of a lower triangle, one a row: as a matrix it would be wider than a page from a dozen sites on. */
export function dissimilarityPairs(
  name: string,
  {items, notListed, sorensen, turnover, nestedness, jaccard, brayCurtis, multiple}: DissimilaritiesResult
): ReportTable {
  const number = (triangle: readonly (readonly number[])[], row: number, column: number) => {
    const value = triangle[row]?.[column]
    return value === undefined ? cell.blank : cell.measure({label: 'dissimilarity', kind: 'ratio', value})
  }
  const listed = brayCurtis.length > 0
  return {
    name,
    columns: [
      wordColumn('First'),
      {...wordColumn('Second'), rowHead: true},
      numberColumn('Sørensen', 'presence'),
      numberColumn('Turnover', 'part of Sørensen'),
      numberColumn('Nestedness', 'part of Sørensen'),
      numberColumn('Jaccard', 'presence'),
      numberColumn('Bray-Curtis', 'catch per 100 trap-nights')
    ],
    rows: listed
      ? items.flatMap((second, row) =>
          items
            .slice(0, row)
            .map((first, column) => [
              cell.text(first.label),
              cell.text(second.label),
              ...[sorensen, turnover, nestedness, jaccard, brayCurtis].map((triangle) =>
                number(triangle, row, column)
              )
            ])
        )
      : [],
    ...(items.length > 1 && {
      foot: [
        [
          cell.text('All together'),
          cell.blank,
          cell.measure(multiple.sorensen),
          cell.measure(multiple.turnover),
          cell.measure(multiple.nestedness),
          cell.blank,
          cell.blank
        ]
      ]
    }),
    empty:
      notListed === undefined
        ? 'There are no two to compare.'
        : asSentence(`not listed, because ${notListed}`)
  }
}
