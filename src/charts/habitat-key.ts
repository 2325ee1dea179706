import type {HabitatResult} from '../model/results.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {lineHeight} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

/** Layers with the habitats beside a plot of points, each with its symbol, from `left` pixels on. */
export function habitatKey(habitats: readonly HabitatResult[], left: number): Record<string, unknown>[] {
  let top = 6
  const rows = habitats.map(({label, style}) => {
    const words = wrapLabel(label, 22, 3)
    const row = {words, first: top, style}
    top += words.split('\n').length * lineHeight + 7
    return row
  })
  return [
    {
      data: {values: rows.map(({first, style}) => ({first, ...habitatFields(style)}))},
      mark: {type: 'point', filled: true, size: 64, x: left, y: {expr: 'datum.first'}},
      encoding: {color: habitatColour, shape: habitatShape}
    },
    {
      data: {
        values: rows.flatMap(({words, first}) =>
          words.split('\n').map((text, line) => ({text, middle: first + line * lineHeight}))
        )
      },
      mark: {type: 'text', align: 'left', baseline: 'middle', x: left + 11, y: {expr: 'datum.middle'}},
      encoding: {text: {field: 'text', type: 'nominal'}}
    }
  ]
}
