import type {Figure} from '../../src/charts/chart.ts'

type Datum = Readonly<Record<string, unknown>>

/** All data of a picture's specification, in the order of its layers. */
export function specValues(figure: Figure | undefined): readonly Datum[] {
  return figure?.spec === undefined ? [] : valuesIn(figure.spec)
}

function valuesIn(node: unknown): Datum[] {
  if (typeof node !== 'object' || node === null) return []
  return Object.entries(node).flatMap(([key, value]) =>
    key === 'values' && Array.isArray(value) && typeof value[0] === 'object'
      ? (value as Datum[])
      : valuesIn(value)
  )
}

/** Everything that a picture says in its data, one line a text. */
export function specTexts(figure: Figure | undefined): readonly string[] {
  return specValues(figure).flatMap(({text, name}) =>
    [text, name].filter((words) => typeof words === 'string')
  )
}

/** The cells of one column of a picture's data. */
export function column(figure: Figure | undefined, head: string): readonly (string | number | null)[] {
  const index = figure?.data.columns.indexOf(head) ?? -1
  if (figure === undefined || index < 0) throw new Error(`no column ${head}`)
  return figure.data.rows.map((row) => row[index] ?? null)
}
