import type {AssemblageResult} from '../model/results.ts'
import {bandOf, type CurveLine, type CurvePoint, type DiversityOrder, partedLine} from './curve-lines.ts'

/** The curves of one order by number of individuals, of those assemblages that have one. */
export function rarefactionLines(
  assemblages: readonly AssemblageResult[],
  order: DiversityOrder
): readonly CurveLine[] {
  return assemblages.flatMap((assemblage) => {
    const points = assemblage.curves.find((curve) => curve.order === order)?.points ?? []
    const part = (wanted: boolean): CurvePoint[] =>
      points
        .filter(({beyond}) => beyond === wanted)
        .map(({size, value, low, high}) => ({at: size, value, ...bandOf(low, high)}))
    return partedLine(assemblage, part(false), part(true)) ?? []
  })
}
