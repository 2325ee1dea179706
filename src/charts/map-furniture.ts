import {inkTones} from '../model/ink.ts'
import type {EqualScaleFrame} from './equal-scale-frame.ts'
import {pixelMarks} from './pixel-marks.ts'

const muted = inkTones.muted.light
const longestShare = 0.3

/** Layers that make a plot a map: its edge, and below it a bar of a round length and an arrow to the north. */
export function mapFurniture({width, height, perPixel}: EqualScaleFrame): readonly Record<string, unknown>[] {
  const metres = roundLength(width * perPixel * longestShare)
  const bar = {left: 1, right: 1 + metres / perPixel, y: height + 24}
  const arrow = {x: width - 9, tip: height + 10, foot: height + 28}
  const words = (text: string, x: number, y: number, align: string) => ({
    data: {values: [{text}]},
    mark: {type: 'text', align, baseline: 'middle', x, y},
    encoding: {text: {field: 'text', type: 'nominal'}}
  })
  return [
    pixelMarks('rect', [{x: 0, y: 0, x2: width, y2: height}], {
      filled: false,
      color: inkTones.rule.light,
      strokeWidth: 1
    }),
    pixelMarks(
      'rule',
      [
        {x: bar.left, x2: bar.right, y: bar.y, y2: bar.y},
        {x: bar.left, x2: bar.left, y: bar.y - 4, y2: bar.y + 4},
        {x: bar.right, x2: bar.right, y: bar.y - 4, y2: bar.y + 4},
        {x: arrow.x, x2: arrow.x, y: arrow.tip, y2: arrow.foot}
      ],
      {color: muted, strokeWidth: 1.25}
    ),
    words(lengthWords(metres), bar.right + 8, bar.y, 'left'),
    {
      data: {values: [{}]},
      mark: {
        type: 'point',
        filled: true,
        shape: 'M0,-1L0.8,1L0,0.5L-0.8,1Z',
        size: 90,
        color: muted,
        x: arrow.x,
        y: arrow.tip + 2
      },
      encoding: {}
    },
    words('N', arrow.x - 8, arrow.foot - 5, 'right')
  ]
}

/** The longest of 1, 2 and 5 times a power of ten that is not above the given length. */
export function roundLength(longest: number): number {
  const power = 10 ** Math.floor(Math.log10(longest))
  const step = [5, 2, 1].find((each) => each * power <= longest) ?? 1
  return step * power
}

/** `50 m`, `2 km`. */
export function lengthWords(metres: number): string {
  return metres >= 1000 ? `${metres / 1000} km` : `${metres} m`
}
