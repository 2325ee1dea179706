import type {Measure} from '../../model/quantity.ts'
import type {ReportTable} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

interface StatedThing {
  readonly id: string
  readonly traps: Measure
  readonly stated: Readonly<Record<string, unknown>>
}

/** A key of study.yaml, its head, and its unit where its values are numbers. */
export type StatedColumn = readonly [key: string, head: string, unit?: string]

/** What study.yaml says of each trap type or fluid; a property that none of them states has no column. */
export function statedTable(
  name: string,
  head: string,
  things: readonly StatedThing[],
  properties: readonly StatedColumn[]
): ReportTable {
  const used = properties.filter(([key]) => things.some(({stated}) => stated[key] !== undefined))
  return {
    name,
    columns: [
      wordColumn(head),
      numberColumn('Traps'),
      ...used.map(([, words, unit]) => (unit === undefined ? wordColumn(words) : numberColumn(words, unit)))
    ],
    rows: things.map(({id, traps, stated}) => [
      cell.text(id),
      cell.measure(traps),
      ...used.map(([key]) => cell.text(statedWords(stated[key])))
    ]),
    empty: 'The study does not say.'
  }
}

/** As written; a plain yes or no where that is all that was said. */
function statedWords(value: unknown): string {
  if (value === undefined) return 'not recorded'
  if (value === true) return 'yes'
  return value === false ? 'no' : String(value)
}
