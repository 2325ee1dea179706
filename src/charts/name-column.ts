import {italicLetterWidth, mostNameLetters, shownName} from './italic-names.ts'

/** Room that the names of species take to the left of a plot, in pixels. */
export const nameColumnWidth = Math.ceil(italicLetterWidth * mostNameLetters) + 10

/** Layers that name each row of a plot to its left, in italics where the name calls for them. */
export function nameColumn(
  names: readonly {readonly name: string; readonly middle: number}[],
  italics: ReadonlySet<string>
): readonly Record<string, unknown>[] {
  const layer = (italic: boolean) => ({
    data: {
      values: names
        .filter(({name}) => italics.has(name) === italic)
        .map(({name, middle}) => ({name: shownName(name), middle}))
    },
    mark: {
      type: 'text',
      align: 'left',
      baseline: 'middle',
      x: -nameColumnWidth,
      y: {expr: 'datum.middle'},
      ...(italic && {fontStyle: 'italic'})
    },
    encoding: {text: {field: 'name', type: 'nominal'}}
  })
  return [layer(true), layer(false)]
}
