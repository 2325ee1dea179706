import {allPoints, extentOf} from './curve-lines.ts'
import type {CurvesByOrder} from './curve-panels.ts'
import {confidenceWords} from './measure-words.ts'

/** A note that says what the bands are, and whether one of them is cut off; nothing where there is none. */
export function bandNotes(curves: CurvesByOrder, confidence: number): readonly string[] {
  const banded = allPoints(curves.flat()).some(({low}) => low !== undefined)
  if (!banded) return []
  const cut = curves.some((lines) => extentOf(allPoints(lines)).cut) ? ' Some go on above the plot.' : ''
  return [
    `Bands: ${confidenceWords(confidence)} intervals of the pooled catch by bootstrap, not of the habitat; they are no test.${cut}`
  ]
}
