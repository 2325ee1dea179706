import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {lettering} from './lettering.ts'
import {namePoints, type PlacedName} from './name-points.ts'
import {type PixelSpan, pixelMarks} from './pixel-marks.ts'
import type {Pixel} from './place-labels.ts'

interface PointOnMap {
  readonly name: string
  readonly style: number
  readonly at: Pixel
}

/** Names in one line as a rule, so that those of sites at one place stand below each other. */
const lettersPerLine = 30

/** Layers with the points of a map and their names, all placed in pixels; and how many have a name. */
export function mapLayers(
  points: readonly PointOnMap[],
  frame: {readonly width: number; readonly height: number}
): {readonly layers: readonly Record<string, unknown>[]; readonly named: number} {
  const names = namePoints(points, frame, lettersPerLine)
  const layers = [
    pixelMarks('rule', names.flatMap(leaderOf), {strokeWidth: 0.6}),
    {
      data: {values: points.map(({style, at}) => ({...habitatFields(style), ...at}))},
      mark: {
        type: 'point',
        filled: true,
        size: 80,
        opacity: 1,
        x: {expr: 'datum.x'},
        y: {expr: 'datum.y'}
      },
      encoding: {color: habitatColour, shape: habitatShape}
    },
    lettering(names)
  ]
  return {layers, named: names.length}
}

function leaderOf({at, leader}: PlacedName): PixelSpan[] {
  return leader === undefined ? [] : [{...at, x2: leader.x, y2: leader.y}]
}
