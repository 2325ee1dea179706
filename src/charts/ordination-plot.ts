import type {HabitatResult, ScopeResult} from '../model/results.ts'
import {type EqualScaleFrame, equalScaleFrame} from './equal-scale-frame.ts'
import {habitatKey} from './habitat-key.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {lettering} from './lettering.ts'
import {namePoints, type PlacedName, unnamedNotes} from './name-points.ts'

type Score = ScopeResult['composition']['principalCoordinates']['scores'][number]

const size = {width: 440, leastHeight: 200, mostHeight: 440, margin: 26}
/** Where the names of the habitats stand, in pixels from the left edge of the plot. */
const keyLeft = size.width + 34

/** The points in a plot with the same scale on both axes, each with its name where there is room. */
export function ordinationPlot(
  scores: readonly Score[],
  habitats: readonly HabitatResult[],
  [xTitle, yTitle]: readonly [string, string]
): {readonly picture: Record<string, unknown>; readonly notes: readonly string[]} {
  const points = scores.map(({style, label, at}) => ({
    name: label,
    datum: {...habitatFields(style), x: at[0] ?? 0, y: at[1] ?? 0}
  }))
  const frame = equalScaleFrame(
    points.map(({datum}) => datum),
    size
  )
  const named = namePoints(
    points.map(({name, datum: {x, y}}) => ({name, at: frame.toPixel(x, y)})),
    frame
  )
  const axis = (field: string, title: string, domain: readonly [number, number]) => ({
    field,
    type: 'quantitative',
    title,
    scale: {domain, nice: false, zero: false},
    axis: {tickCount: 4, format: '.2~f'}
  })
  const encoding = {x: axis('x', xTitle, frame.x), y: axis('y', yTitle, frame.y)}
  const picture = {
    width: frame.width,
    height: frame.height,
    layer: [
      {
        data: {values: named.flatMap((name) => leaderOf(name, frame))},
        mark: {type: 'rule', strokeWidth: 0.6},
        encoding: {...encoding, x2: {field: 'x2'}, y2: {field: 'y2'}}
      },
      {
        data: {values: points.map(({datum}) => datum)},
        mark: {type: 'point', filled: true, size: 90, opacity: 1},
        encoding: {...encoding, color: habitatColour, shape: habitatShape}
      },
      lettering(named),
      ...habitatKey(habitats, keyLeft)
    ]
  }
  return {picture, notes: unnamedNotes(named.length, scores.length)}
}

function leaderOf({at, leader}: PlacedName, {fromPixel}: EqualScaleFrame): object[] {
  if (leader === undefined) return []
  const [from, to] = [fromPixel(at), fromPixel(leader)]
  return [{...from, x2: to.x, y2: to.y}]
}
