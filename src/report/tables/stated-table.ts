import type {Measure} from '../../model/quantity.ts'
import type {ReportTable} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

interface StatedThing {
  readonly id: string
  readonly traps: Measure
  readonly stated: Readonly<Record<string, unknown>>
}

/** A key of study.yaml, its words, and its unit where its values are numbers. */
export type StatedProperty = readonly [key: string, head: string, unit?: string]

/** What study.yaml says of each trap type or fluid, one column for each; what it says of none of them has no row. */
export function statedTable(
  name: string,
  head: string,
  things: readonly StatedThing[],
  properties: readonly StatedProperty[]
): ReportTable {
  const used = properties.filter(([key]) => things.some(({stated}) => stated[key] !== undefined))
  return {
    name,
    columns: [wordColumn(head), ...things.map(({id}) => wordColumn(id))],
    rows:
      things.length === 0
        ? []
        : [
            [cell.text('Traps'), ...things.map(({traps}) => cell.measure(traps))],
            ...used.map(([key, words, unit]) => [
              cell.text(unit === undefined ? words : `${words} (${unit})`),
              ...things.map(({stated}) => cell.text(statedWords(stated[key])))
            ])
          ],
    empty: 'The study does not say.'
  }
}

/** As written; a plain yes or no where that is all that was said. */
function statedWords(value: unknown): string {
  if (value === undefined) return 'not recorded'
  if (value === true) return 'yes'
  return value === false ? 'no' : String(value)
}
