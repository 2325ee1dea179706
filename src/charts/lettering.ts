import {lineMark, textLines} from './text-lines.ts'

/** Words at their places in pixels, each line of them by itself. */
export function lettering(
  labels: readonly {readonly words: string; readonly left: number; readonly middle: number}[],
  look: Record<string, unknown> = {}
): Record<string, unknown> {
  return {
    data: {
      values: labels.flatMap(({words, left, middle}) =>
        textLines(words, 'middle').map((line) => ({...line, left, middle}))
      )
    },
    mark: {
      ...lineMark,
      align: 'left',
      baseline: 'middle',
      x: {expr: 'datum.left'},
      y: {expr: 'datum.middle'},
      ...look
    },
    encoding: {text: {field: 'text', type: 'nominal'}}
  }
}
